import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { chiSquareQuantile } from '../numeric/special.ts';

export const plateToContainer = calculation({
  name: 'settle-plate-to-container',
  title: 'What a settle plate says about open containers beside it',
  inputs: {
    colonies: number('n', 'colonies on all plates together', '1', { min: 0, max: 1e6, whole: true }),
    plates: number('k', 'number of plates', '1', {
      default: 1,
      min: 1,
      max: 1e5,
      whole: true,
      from: 'a single plate',
    }),
    plate_mm: number('D', 'diameter of a plate', 'mm', {
      default: 90,
      min: 10,
      max: 300,
      from: 'usual plate, common practice',
    }),
    time_h: number('t', 'exposure of a plate', 'h', {
      default: 4,
      min: 0.01,
      max: 24,
      from: 'longest exposure of a plate in EU GMP Annex 1, from memory',
    }),
    mouth_mm: number('d', 'diameter of the mouth of a container', 'mm', { min: 1, max: 2000 }),
    open: number('t_o', 'time that a container is open', 's', { min: 0, max: 86400 }),
    confidence_pct: number('c', 'confidence', '%', {
      default: 95,
      min: 50,
      max: 99.99,
      from: 'common practice',
    }),
  },
  outputs: {
    upper: { symbol: 'm_u', label: 'microbes per container, upper limit', unit: '1' },
    oneIn: { symbol: '1/m_u', label: 'one container in so many, at that limit', unit: '1' },
    estimate: {
      symbol: 'm',
      label: 'microbes per container at the count; at one colony when none was found',
      unit: '1',
    },
    estimateOneIn: { symbol: '1/m', label: 'one container in so many, at that count', unit: '1' },
    upperCount: { symbol: 'n_u', label: 'upper limit of the colonies', unit: '1' },
  },
  equation: [
    'ratio = (d/D)^2 t_o / (k t)',
    'n_u = chi2(c; 2n + 2)/2',
    'm_u = n_u ratio, m = max(n, 1) ratio',
  ],
  validity:
    'Plates stand where the containers are, for the whole time; same air. It shows a limit of what these plates can see, never sterility.',
  source: 'Ratio of area and time; F. Garwood (1936)',
  example: {
    inputs: { colonies: 0, mouth_mm: 68, open: 9 },
    expected: { estimate: 3.57e-4, estimateOneIn: 2803, oneIn: 936 },
    tolerance: 1e-3,
    source: 'scenario of a jar of 68 mm open for 9 s beside one empty plate, printed with 3 to 4 digits',
  },
  compute(x) {
    const ratio = ((x.mouth_mm / x.plate_mm) ** 2 * x.open) / (x.plates * x.time_h * 3600);
    const upperCount = chiSquareQuantile(x.confidence_pct / 100, 2 * x.colonies + 2) / 2;
    const estimate = Math.max(1, x.colonies) * ratio;
    const most = 1e15;
    return {
      values: {
        upper: upperCount * ratio,
        oneIn: Math.min(most, 1 / (upperCount * ratio)),
        estimate,
        estimateOneIn: Math.min(most, 1 / estimate),
        upperCount,
      },
      warnings:
        x.colonies === 0 ? ['No colony is no zero: the upper limit is what these plates can show.'] : [],
    };
  },
});
