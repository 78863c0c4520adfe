import { describe, expect, it } from 'vitest';
import { poolFinding, reviewOf, trayModel, trayOutcome, trayProject } from './box.fixture.ts';
import { buildContent } from './document/build.ts';
import { coveredCodePoints } from './document/font.ts';
import { newPrinter } from './document/printable.ts';
import { template } from './document/template.ts';

const { content } = await buildContent({
  project: trayProject(),
  revisionId: 'A',
  model: trayModel(),
  outcome: trayOutcome(),
  review: reviewOf([poolFinding()]),
  decisions: {},
  date: '2026-01-15',
});

describe('words of the file', () => {
  it('never claims what it must not claim', () => {
    const all = template + JSON.stringify(content);
    expect(all).not.toMatch(/complian|conform(s|ity to)|certified/i);
    expect(all).toContain('never a certificate');
  });

  it('numbers calculations once and says which finding uses them', () => {
    const { workings, groups } = content;
    expect(workings).toHaveLength(1);
    expect(workings[0].usedBy).toEqual([1]);
    expect(groups[0].findings[0].numbers[0].working).toBe(1);
  });

  it('says of every finding whether it was decided', () => {
    expect(content.groups[0].findings[0].decision.kind).toBe('Not decided');
    expect(content.decided).toBe(
      '1 finding: 0 to be changed, 0 concessions, 0 that do not apply, 1 not decided.',
    );
  });
});

describe('printable text', () => {
  it('covers the signs of the trade', () => {
    for (const letter of 'Ø µ ° ² ³ × − – … ≤ ≥ → ½ ₂ ⁻ é ß ł Ж π'.replaceAll(' ', ''))
      expect(coveredCodePoints().has(letter.codePointAt(0) as number), letter).toBe(true);
  });

  it('writes out what the typeface lacks and marks that turn text around', () => {
    const printer = newPrinter();
    expect(printer.text('a \u05d0\u05d1 b')).toBe('a [U+05D0 U+05D1] b');
    expect(printer.text('x\u202ey')).toBe('x[U+202E]y');
    expect(printer.missing()).toEqual([0x5d0, 0x5d1, 0x202e]);
  });

  it('lets long words break and keeps short ones whole', () => {
    const { text } = newPrinter();
    expect(text('short-word')).toBe('short-word');
    expect(
      text('y'.repeat(30))
        .split('\u200b')
        .map((s) => s.length),
    ).toEqual([12, 12, 6]);
  });
});
