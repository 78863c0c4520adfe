import { en } from './en.ts';

export type Messages = typeof en;

/** What the workbench says. Other languages are catalogues of the same shape. */
export const m: Messages = en;
