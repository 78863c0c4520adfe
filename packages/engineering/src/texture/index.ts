export { profileTexture } from './profile.ts';
export { roughnessCutoff } from './roughness-cutoff.ts';
export { roughnessVerdict } from './sixteen-percent.ts';
