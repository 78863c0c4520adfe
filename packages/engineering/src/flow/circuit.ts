import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number, text } from '../calculation/inputs.ts';
import { gravity, liquidWater } from '../water/properties.ts';
import { frictionFactor, swameeJain1976 } from './friction.ts';
import type { Pipe } from './network/network.ts';
import { readNetwork } from './network/read-inp.ts';
import { solveNetwork } from './network/solve.ts';
import { areaOf } from './pipe-state.ts';

export const circuit = calculation({
  name: 'cleaning-circuit',
  title: 'A cleaning circuit as a network: speed, shear and pressure of every segment',
  inputs: {
    network: text(
      'network',
      'an EPANET input text with [JUNCTIONS], [RESERVOIRS] or [TANKS], [PIPES], [PUMPS], [CURVES], "Headloss D-W"',
    ),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 99,
      from: 'a room, common practice',
    }),
    targetSpeed: number('v_t', 'speed that every segment should reach', 'm/s', {
      default: 1.5,
      min: 0.01,
      max: 10,
      from: 'cleaning practice, 1.5 to 2 m/s',
    }),
    friction: choice(
      'friction factor',
      { colebrook: 'Colebrook 1939, exact', swameeJain: 'Swamee and Jain 1976, as in EPANET' },
      { default: 'colebrook' },
    ),
  },
  outputs: {
    worstSpeed: { symbol: 'v_min', label: 'speed in the worst flowing segment', unit: 'm/s' },
    worstShear: { symbol: 'tau_min', label: 'wall shear in that segment', unit: 'Pa' },
    largestFlow_m3h: { symbol: 'Q_max', label: 'largest flow of any segment', unit: 'm3/h' },
    neededFlow_m3h: {
      symbol: 'Q_n',
      label: 'that flow when the worst segment reaches the target',
      unit: 'm3/h',
    },
    stillSegments: { symbol: 'n_0', label: 'number of segments without flow', unit: '1' },
  },
  equation: [
    'sum of flows = 0 at every junction; head loss = (f L/d + K) v^2/(2 g) = head difference; pump H = H_0 - a Q^c',
    'tau_w = f rho v^2 / 8; Q_n = Q_max v_t / v_min',
  ],
  validity:
    'Steady flow of water, full pipes. The needed flow is scaled in proportion, which holds while all segments are turbulent. Tees keep their loss coefficient at every split.',
  source:
    'E. Todini, S. Pilati (1988), global gradient algorithm; input format of EPANET 2.2 (public domain); water by IAPWS',
  example: {
    inputs: {
      network:
        '[JUNCTIONS]\nJ1 0 10.6\n[RESERVOIRS]\nR1 30\n[PIPES]\nP1 R1 J1 100 50 0.0015 0 Open\n[OPTIONS]\nUnits CMH\nHeadloss D-W\n',
      temperature_degC: 20,
    },
    expected: { worstSpeed: 1.49959, largestFlow_m3h: 10.6 },
    tolerance: 1e-5,
    source: 'one pipe: v = Q / (pi d^2 / 4); network A of the check values',
  },
  caution: 'Hot cleaning liquid under pressure scalds and burns: depressurise and drain before opening.',
  compute(x) {
    const reading = readNetwork(x.network);
    if (reading.kind === 'error') return refuse(`The network cannot be read: ${reading.message}`);
    const { network } = reading;
    const water = liquidWater(x.temperature_degC, 300000);
    const kinematic = water.viscosity / water.density;
    const law = x.friction === 'colebrook' ? frictionFactor : swameeJain1976;
    const state = solveNetwork(network, { density: water.density, kinematic, gravity }, law);
    if (state.kind === 'failed') return refuse(`The network has no solution: ${state.reason}`);

    const index = new Map([...network.junctions, ...network.fixed].map((node, i) => [node.id, i]));
    const pipes = network.links.flatMap((link, k) => {
      if (link.kind !== 'pipe') return [];
      const flow = state.flows[k];
      const speed = Math.abs(flow) / areaOf(link.bore);
      const reynolds = (speed * link.bore) / kinematic;
      const shear =
        speed < 1e-6 ? 0 : (law(reynolds, link.roughness / link.bore) * water.density * speed ** 2) / 8;
      const loss =
        water.density *
        gravity *
        Math.abs(state.heads[index.get(link.from)!] - state.heads[index.get(link.to)!]);
      return [{ link: link as Pipe, flow, speed, reynolds, shear, loss }];
    });
    const moving = pipes.filter((pipe) => pipe.speed > 1e-6);
    if (moving.length === 0)
      return refuse('Nothing flows in this network: give a demand, a pump or a second tank');
    const worst = moving.reduce((a, b) => (b.speed < a.speed ? b : a));
    const largest = Math.max(...moving.map((pipe) => Math.abs(pipe.flow))) * 3600;
    const stillOnes = pipes.filter((pipe) => pipe.speed <= 1e-6).map((pipe) => pipe.link.id);
    const low = network.junctions.filter(
      (node, i) =>
        water.density * gravity * (state.heads[i] - node.elevation) + 101325 < water.saturationPressure,
    );
    return {
      values: {
        worstSpeed: worst.speed,
        worstShear: worst.shear,
        largestFlow_m3h: largest,
        neededFlow_m3h: (largest * x.targetSpeed) / worst.speed,
        stillSegments: stillOnes.length,
      },
      tables: [
        {
          title: 'Segments',
          columns: [
            { name: 'segment', unit: '' },
            { name: 'flow', unit: 'm3/h' },
            { name: 'speed', unit: 'm/s' },
            { name: 'Reynolds number', unit: '1' },
            { name: 'wall shear', unit: 'Pa' },
            { name: 'pressure loss', unit: 'kPa' },
          ],
          rows: pipes.map((p) => [p.link.id, p.flow * 3600, p.speed, p.reynolds, p.shear, p.loss / 1000]),
        },
        {
          title: 'Junctions',
          columns: [
            { name: 'junction', unit: '' },
            { name: 'head', unit: 'm' },
            { name: 'pressure above the surroundings', unit: 'kPa' },
          ],
          rows: network.junctions.map((node, i) => [
            node.id,
            state.heads[i],
            (water.density * gravity * (state.heads[i] - node.elevation)) / 1000,
          ]),
        },
      ],
      warnings: [
        `The worst segment is ${worst.link.id}.`,
        ...(worst.speed < x.targetSpeed ? [`It stays below the ${x.targetSpeed} m/s asked for.`] : []),
        ...(stillOnes.length > 0
          ? [`No flow in: ${stillOnes.slice(0, 20).join(', ')}. These are dead legs.`]
          : []),
        ...(worst.reynolds < 10000
          ? ['The worst segment is not fully turbulent: the needed flow is an estimate.']
          : []),
        ...(low.length > 0
          ? [
              `Below the vapour pressure at: ${low
                .map((node) => node.id)
                .slice(0, 20)
                .join(', ')}.`,
            ]
          : []),
      ],
    };
  },
});
