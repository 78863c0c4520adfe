export { lightCurtain } from './light-curtain.ts';
export { reachDistance } from './reach-distance.ts';
