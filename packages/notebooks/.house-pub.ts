import { publishPages, OUR_PAGES } from '@rideout/notebooks/publish';
import { loadScenario } from '@rideout/sim/node';
const [which, page] = process.argv.slice(2);
const { scenario } = loadScenario(`/work/main/data/${which}-house.yaml`);
const t = Date.now();
console.log(await publishPages({ scenario, pages: [(OUR_PAGES as Record<string,string>)[page!] ?? page!], outFile: `/tmp/house/${which}-${page!.split('/').pop()!.replace('.html','')}.html`, draws: 60 }), Date.now() - t);
