import type { MachineSummary } from '@coveline/api';
import { m } from '../../messages/index.ts';

/** Demo data says that it is invented; where its name does so already, once is enough. */
export const saysInvented = ({ invented, name }: Pick<MachineSummary, 'invented' | 'name'>): boolean =>
  invented && !name.toLocaleLowerCase().includes(m.start.invented);
