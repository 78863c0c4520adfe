import { formatQuantity } from '@coveline/quantity';

/** Locale of numbers and dates: the language of the page. */
export const locale = document.documentElement.lang || 'en';

/** A number with its unit for reading; three significant digits unless told. */
export const show = (value: number, unit: string, digits = 3): string =>
  formatQuantity(value, unit, { locale, digits });

/** Heights and lengths to the whole millimetre. */
export const showWhole = (value_mm: number): string =>
  formatQuantity(Math.round(value_mm), 'mm', { locale, digits: 9 });

export const showCount = (n: number): string => new Intl.NumberFormat(locale).format(n);

const time = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' });
export const showTime = (iso: string): string => time.format(new Date(iso));

/** The day as the person has it, as an ISO date. */
export const today = (): string => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
};

const day = new Intl.DateTimeFormat(locale, { dateStyle: 'medium' });
export const showDay = (iso: string): string => day.format(new Date(`${iso}T00:00`));

const ago = new Intl.RelativeTimeFormat(locale, { numeric: 'auto' });

/** "12 seconds ago", "yesterday"; a date where that is longer ago than a week. */
export function showAgo(iso: string, now: number = Date.now()): string {
  const seconds = (new Date(iso).getTime() - now) / 1000;
  const steps = [
    [60, 1, 'second'],
    [3600, 60, 'minute'],
    [86_400, 3600, 'hour'],
    [604_800, 86_400, 'day'],
  ] as const;
  for (const [below, size, unit] of steps)
    if (Math.abs(seconds) < below) return ago.format(Math.round(seconds / size), unit);
  return showTime(iso);
}
