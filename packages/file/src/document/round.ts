/** What was found at the machine, and what nobody has looked at. */
import type { RoundStop } from '@coveline/review';
import { inWords } from '@coveline/review';
import type { FileRequest } from '../request.ts';
import type { RoundContent } from './content.ts';
import type { Printer } from './printable.ts';

const stateWords = {
  asItShould: 'as it should be',
  notAsItShould: 'not as it should be',
  notHere: 'not on this machine',
} as const;

export function roundContent({ review }: FileRequest, { text }: Printer): RoundContent {
  const { stops, items, answered } = review.round;
  return {
    summary: `${answered} of ${items} items were looked at. What was not looked at is not shown to be in order.`,
    stops: stops.flatMap((stop) => {
      const rows = stop.items.flatMap((item) =>
        item.answer
          ? [
              {
                question: text(item.text),
                found: text([stateWords[item.answer.state], inWords(item.answer)].filter(Boolean).join(': ')),
                who: text(`${item.answer.by}, ${item.answer.on}`),
              },
            ]
          : [],
      );
      return rows.length === 0 ? [] : [{ title: text(stop.name), rows }];
    }),
    open: stops.flatMap((stop) => openIn(stop, text)),
  };
}

function openIn(stop: RoundStop, text: Printer['text']): RoundContent['open'] {
  const open = stop.items.filter((i) => i.answer === null).length;
  return open === 0
    ? []
    : [{ label: text(stop.name), value: `${open} of ${stop.items.length} not looked at` }];
}
