export { type Running, type ServeOptions, serve } from './serve.ts';
