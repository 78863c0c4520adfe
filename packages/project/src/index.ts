export { applyCommand, type Command, command } from './command.ts';
export * from './schema.ts';
