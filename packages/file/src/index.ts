export { makeFile } from './make-file.ts';
export { type Camera, cameraOnBox } from './picture/camera.ts';
export type { Sign } from './picture/palette.ts';
export { directionOf, type PlaceToSee, viewOfPlace } from './picture/place-view.ts';
export { type PictureMark, type PictureRequest, renderPicture } from './picture/render.ts';
export type { FileControl, FileRequest, MadeFile } from './request.ts';
