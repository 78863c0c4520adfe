export type { Working, WorkingValue } from './working.ts';
