import { publishPages } from '@rideout/notebooks/publish';
import { loadScenario } from '@rideout/sim/node';
const { scenario } = loadScenario(`/work/main/data/full-house.yaml`);
console.log(await publishPages({ scenario, outDir: '/tmp/house/folder', draws: 60 }));
