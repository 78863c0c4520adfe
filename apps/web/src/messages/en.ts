import { air } from './en/air.ts';
import { calculations } from './en/calculations.ts';
import { cleaning } from './en/cleaning.ts';
import { model } from './en/model.ts';
import { pages } from './en/pages.ts';
import { requirements } from './en/requirements.ts';
import { revisions } from './en/revisions.ts';
import { round } from './en/round.ts';
import { shell } from './en/shell.ts';
import { site } from './en/site.ts';
import { start } from './en/start.ts';
import { view } from './en/view.ts';
import { walk } from './en/walk.ts';
import { words } from './en/words.ts';

/** English. Numbers come in already written; every message is a whole sentence or a whole label, never a piece. */
export const en = {
  ...words,
  ...shell,
  ...start,
  ...view,
  ...walk,
  ...model,
  ...pages,
  ...requirements,
  ...calculations,
  ...air,
  ...cleaning,
  ...round,
  ...revisions,
  ...site,
};
