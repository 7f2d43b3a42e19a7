import { publishPages } from '@rideout/notebooks/publish';
import { loadScenario, runStudy } from '@rideout/sim/node';
import { summarise } from '@rideout/sim';
const {scenario} = loadScenario(process.argv[2] ?? 'data/full-house.yaml');
let summary;
if (process.argv[3]) { const r = await runStudy(scenario, {seed:'rideout', draws:+process.argv[3], workers:2}); summary = summarise(r.study, r.rows); console.log('run', r.seconds, JSON.stringify(summary).length); }
console.log(await publishPages({scenario, outFile:'/tmp/stub/real.html', ...(summary&&{summary})}));
