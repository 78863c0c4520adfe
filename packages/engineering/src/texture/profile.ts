import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number, text } from '../calculation/inputs.ts';
import { cutoffForRa } from './cutoff-table.ts';
import { gaussianMeanLine } from './gaussian.ts';
import { materialRatio, type TextureParameters, textureParameters } from './parameters.ts';
import { readProfile } from './read-profile.ts';

const sections = 5;

/** Products of the filter at the largest cut-off, about two seconds. */
const mostWork = 2e9;

/** Roughness profile over five sections, or nothing when the trace is too short. */
function roughnessOf(heights: Float64Array, spacing_mm: number, cutoff_mm: number): Float64Array | undefined {
  const line = gaussianMeanLine(heights, spacing_mm, cutoff_mm);
  const margin = Math.round(cutoff_mm / 2 / spacing_mm);
  const wanted = Math.round((sections * cutoff_mm) / spacing_mm);
  if (heights.length < wanted + 2 * margin) return undefined;
  const start = Math.floor((heights.length - wanted) / 2);
  return Float64Array.from({ length: wanted }, (_, i) => heights[start + i] - line[start + i]);
}

/** Cut-off by the rule of the standard: start at 0.8 mm and move until Ra lies in the range of the cut-off. */
function chooseCutoff(heights: Float64Array, spacing_mm: number): number | undefined {
  let cutoff = 0.8;
  for (let i = 0; i < 6; i++) {
    const profile = roughnessOf(heights, spacing_mm, cutoff);
    if (profile === undefined) return i === 0 ? undefined : cutoff;
    const next = cutoffForRa(textureParameters(profile, spacing_mm, sections).ra).cutoff_mm;
    if (next === cutoff) return cutoff;
    cutoff = next;
  }
  return cutoff;
}

export const profileTexture = calculation({
  name: 'roughness-of-profile',
  title: 'Roughness parameters from a profile file',
  inputs: {
    file: text(
      'profile',
      'two columns x in mm and z in um, or one column of z with the spacing given; numbers between blanks, commas, semicolons or tabs',
    ),
    spacing_um: number('dx', 'spacing, for one column; 0 reads it from the file', 'um', {
      default: 0,
      min: 0,
      max: 1000,
      from: 'as the file says',
    }),
    cutoff_mm: number('lambda_c', 'cut-off; 0 chooses it by the rule of the standard', 'mm', {
      default: 0,
      min: 0,
      max: 25,
      from: 'the rule of the standard chooses',
    }),
    depth_um: number('c', 'depth below the highest peak for the material ratio', 'um', {
      default: 1,
      min: 0,
      max: 1000,
      from: 'an example: give your own',
    }),
    edition: choice(
      'edition',
      { iso21920: 'ISO 21920-2:2021', iso4287: 'ISO 4287:1997 with ISO 4288:1996' },
      { default: 'iso21920' },
    ),
  },
  outputs: {
    ra_um: { symbol: 'Ra', label: 'arithmetic mean height', unit: 'um' },
    rq_um: { symbol: 'Rq', label: 'root mean square height', unit: 'um' },
    rz_um: { symbol: 'Rz', label: 'mean of peak to valley over five sections', unit: 'um' },
    rt_um: { symbol: 'Rt', label: 'total height', unit: 'um' },
    rp_um: { symbol: 'Rp', label: 'highest peak', unit: 'um' },
    rv_um: { symbol: 'Rv', label: 'deepest valley', unit: 'um' },
    rsm_um: { symbol: 'Rsm', label: 'mean width of the profile elements; 0 when there are none', unit: 'um' },
    skewness: { symbol: 'Rsk', label: 'skewness', unit: '1' },
    materialRatio_pct: { symbol: 'Rmr', label: 'material ratio at the depth', unit: '%' },
    cutoffUsed_mm: { symbol: 'lambda_c', label: 'cut-off used', unit: 'mm' },
  },
  equation: [
    'roughness = heights - Gaussian mean line, s(x) = exp(-pi (x/(a lambda_c))^2)/(a lambda_c), a = sqrt(ln 2/pi)',
    'half a cut-off is left out at each end, five sections are evaluated',
    'Ra = mean |z|, Rq = sqrt(mean z^2), Rz = mean over sections of (peak + valley), Rmr = share at or above (highest - c)',
  ],
  validity:
    'Equally spaced trace at least six cut-offs long, at most a tenth of the cut-off a step; form removed by the mean line only; no short-wave filter is applied.',
  source: 'ISO 21920-2:2021; ISO 4287:1997; ISO 16610-21:2011',
  example: {
    inputs: {
      file: Array.from({ length: 61 }, (_, i) => (i % 2 === 0 ? 1 : -1)).join('\n'),
      spacing_um: 8,
      cutoff_mm: 0.08,
    },
    expected: { ra_um: 1, rq_um: 1, rz_um: 2 },
    tolerance: 0.02,
    source: 'closed form: a profile that jumps between +1 and -1; the mean line keeps under 2 % of it',
  },
  compute(x) {
    const reading = readProfile(x.file, x.spacing_um / 1000);
    if (reading.kind === 'error') return refuse(`The profile cannot be read: ${reading.message}`);
    const { heights, spacing_mm } = reading;
    if (spacing_mm < 1e-6)
      return refuse(
        `The spacing of ${spacing_mm} mm is below a nanometre: give it in mm in the file, or in um`,
      );
    if (heights.length * Math.min(heights.length, 8 / spacing_mm) > mostWork)
      return refuse(
        `The profile has ${heights.length} points at ${(spacing_mm * 1000).toPrecision(3)} um: thin it out, a tenth of the short cut-off is fine enough`,
      );
    const cutoff = x.cutoff_mm > 0 ? x.cutoff_mm : chooseCutoff(heights, spacing_mm);
    const length = (heights.length - 1) * spacing_mm;
    const profile = cutoff === undefined ? undefined : roughnessOf(heights, spacing_mm, cutoff);
    if (cutoff === undefined || profile === undefined)
      return refuse(
        `The trace is ${length.toFixed(3)} mm long: a cut-off of ${cutoff ?? 0.8} mm needs six of it, ${(6 * (cutoff ?? 0.8)).toFixed(2)} mm`,
      );
    if (spacing_mm > cutoff / 10)
      return refuse(
        `The spacing of ${(spacing_mm * 1000).toPrecision(3)} um is too coarse for a cut-off of ${cutoff} mm`,
      );
    const p: TextureParameters = textureParameters(profile, spacing_mm, sections);
    const proper = cutoffForRa(p.ra).cutoff_mm;
    return {
      values: {
        ra_um: p.ra,
        rq_um: p.rq,
        rz_um: p.rz,
        rt_um: p.rt,
        rp_um: p.rp,
        rv_um: p.rv,
        rsm_um: Number.isNaN(p.rsm) ? 0 : p.rsm * 1000,
        skewness: p.rsk,
        materialRatio_pct: 100 * materialRatio(profile, x.depth_um),
        cutoffUsed_mm: cutoff,
      },
      warnings: [
        ...(proper !== cutoff
          ? [
              `For Ra ${p.ra.toPrecision(3)} um the standard's default cut-off is ${proper} mm, not ${cutoff} mm.`,
            ]
          : []),
        ...(Number.isNaN(p.rsm) ? ['No profile elements were found for Rsm.'] : []),
        x.edition === 'iso21920'
          ? 'Named by ISO 21920-2:2021; a drawing before 2021 means ISO 4287 and ISO 4288, with the 16 % rule by default.'
          : 'Named by ISO 4287:1997, which ISO 21920-2:2021 has replaced.',
      ],
    };
  },
});
