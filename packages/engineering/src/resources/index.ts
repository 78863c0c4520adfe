export { cleaningCost } from './cleaning-cost.ts';
export { fuelCarbon } from './fuel-carbon.ts';
export { payback } from './payback.ts';
export { pumpEnergy } from './pump-energy.ts';
