import { calculation, refuse } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';
import { npshAvailable } from './npsh.ts';

/** Common practice asks for this much more than the pump requires. */
const reserve_m = 0.5;

export const npshCurve = calculation({
  name: 'npsh-pump-curve',
  title: "NPSH available against the pump's own curve over the flow",
  inputs: {
    flows_m3h: list('Q_i', 'flows of the curve of the pump', 'm3/h', { min: 0, max: 1e4, minCount: 2 }),
    required: list('NPSHr_i', 'NPSH that the pump requires at these flows', 'm', {
      min: 0,
      max: 100,
      minCount: 2,
    }),
    flow_m3h: number('Q', 'flow of the circuit', 'm3/h', { min: 1e-6, max: 1e4 }),
    temperature_degC: number('T', 'water temperature', 'degC', { min: 0.01, max: 150 }),
    pressure_kPa: number('p', 'absolute pressure on the liquid in the suction tank', 'kPa', {
      default: 101.325,
      min: 1,
      max: 1000,
      from: 'standard atmosphere, ISO 2533',
    }),
    head: number('z', 'liquid level above the pump', 'm', {
      default: 0,
      min: -10,
      max: 50,
      from: 'none when left empty',
    }),
    loss: number('h_L', 'head loss of the suction line at the flow of the circuit', 'm', {
      default: 0,
      min: 0,
      max: 50,
      from: 'none when left empty',
    }),
  },
  outputs: {
    margin: { symbol: 'dNPSH', label: 'margin over the pump at the flow of the circuit', unit: 'm' },
    available: { symbol: 'NPSHa', label: 'NPSH available', unit: 'm' },
    needed: { symbol: 'NPSHr', label: 'NPSH required, between the points of the curve', unit: 'm' },
    leastMargin: { symbol: 'dNPSH_min', label: 'least margin over the whole curve', unit: 'm' },
  },
  equation: [
    'NPSHa(q) = (p - p_sat)/(rho g) + z - h_L (q/Q)^2',
    'NPSHr(q) by straight lines between the points of the curve',
    'dNPSH = NPSHa(Q) - NPSHr(Q)',
  ],
  validity:
    'Water without dissolved gas; loss of a turbulent suction line, as the square of the flow; only between the points of the curve. Foam and air in the return line make it worse.',
  source:
    'ISO 17769-1 (definition); the curve is that of the maker of the pump (NPSH3 of ISO 9906); water by IAPWS R7-97',
  example: {
    inputs: {
      flows_m3h: [5, 10, 15],
      required: [1, 2, 4],
      flow_m3h: 10,
      temperature_degC: 80,
      head: 1.5,
      loss: 0.8,
    },
    // At 15 m3/h: 6.3568 + 0.8 - 0.8 (15/10)^2 - 4 = 1.3568.
    expected: { margin: 4.3568, available: 6.3568, needed: 2, leastMargin: 1.3568 },
    tolerance: 4e-5,
    source: 'check value P-26 for the NPSH available; the rest by hand',
  },
  compute({ flows_m3h, required, flow_m3h, temperature_degC, pressure_kPa, head, loss }) {
    if (flows_m3h.length !== required.length)
      return refuse(
        `There are ${flows_m3h.length} flows and ${required.length} values of NPSH: give one for each`,
      );
    if (flows_m3h.some((q, i) => i > 0 && q <= flows_m3h[i - 1]))
      return refuse('The flows of the curve must rise from one point to the next');
    const last = flows_m3h[flows_m3h.length - 1];
    if (flow_m3h < flows_m3h[0] || flow_m3h > last)
      return refuse(
        `The flow of ${flow_m3h} m3/h lies outside of the curve, ${flows_m3h[0]} to ${last} m3/h: the curve says nothing there`,
      );
    const still = npshAvailable.run({ temperature_degC, pressure_kPa, head, loss: 0 });
    if (still.kind === 'refused') return still;
    const availableAt = (q: number) => still.values.available - loss * (q / flow_m3h) ** 2;
    const next = flows_m3h.findIndex((q, i) => i > 0 && q >= flow_m3h);
    const share = (flow_m3h - flows_m3h[next - 1]) / (flows_m3h[next] - flows_m3h[next - 1]);
    const needed = required[next - 1] + share * (required[next] - required[next - 1]);
    const available = availableAt(flow_m3h);
    // Available falls ever steeper and required runs straight between two points: the least margin is at a point.
    const leastMargin = Math.min(...flows_m3h.map((q, i) => availableAt(q) - required[i]));
    return {
      values: { margin: available - needed, available, needed, leastMargin },
      warnings: [
        ...(available - needed < reserve_m
          ? ['Less than 0.5 m margin: the pump may cavitate (common practice asks for 0.5 m and more).']
          : []),
        ...(leastMargin < 0 && available >= needed
          ? ['At other flows of its curve the pump would cavitate: keep the flow where it is calculated.']
          : []),
      ],
      tables: [
        {
          title: 'Over the curve of the pump',
          columns: [
            { name: 'flow', unit: 'm3/h' },
            { name: 'available', unit: 'm' },
            { name: 'required', unit: 'm' },
          ],
          rows: flows_m3h.map((q, i) => [q, availableAt(q), required[i]]),
        },
      ],
    };
  },
});
