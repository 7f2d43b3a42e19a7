/** Studies asked for by advice, run on the page's workers: rows and nothing else, the same as anywhere. */
import {
  prepareStudy,
  RowsInOrder,
  type AskStudy,
  type OutcomeRows,
  type Scenario,
  type StudyQuestion,
} from '@rideout/sim';
import { studyHands } from './study-client.ts';
import type { StudyHand } from './study-hand.ts';

const DRAWS_AT_ONCE = 2; // such studies have many households

export interface StudyAsker {
  readonly ask: AskStudy;
  /** Ends the workers, whatever they are doing; what is under way is never answered. */
  readonly dismiss: () => void;
}

/** @param onRuns told how many runs (outages × households × strategies) are done since it was made */
export function studyAsker(onRuns: (runs: number) => void): StudyAsker {
  const hands = studyHands();
  let runs = 0;
  return {
    async ask(scenario, question) {
      const { alternatives } = scenario;
      const perDraw = alternatives.reduce((sum, a) => sum + a.household.strategies.length, 0);
      const rows = await rowsOf(hands, scenario, question, (draws) => onRuns((runs += draws * perDraw)));
      return { outline: prepareStudy(scenario, question), rows };
    },
    dismiss: () => hands.forEach((hand) => hand.dismiss()),
  };
}

async function rowsOf(
  hands: readonly StudyHand[],
  scenario: Scenario,
  { seed, draws, rows: wanted }: StudyQuestion,
  onDraws: (draws: number) => void,
): Promise<OutcomeRows> {
  const rows = new RowsInOrder();
  let given = 0;
  const work = async (hand: StudyHand) => {
    await hand.ask({ job: 'prepare', scenario, seed, rows: wanted });
    while (given < draws) {
      const from = given;
      const to = (given = Math.min(from + DRAWS_AT_ONCE, draws));
      const reply = await hand.ask({ job: 'shard', from, to });
      if (reply.reply !== 'shard') throw new Error(`asked for draws, got ${reply.reply}`);
      rows.add(reply.from, reply.to, reply.rows);
      onDraws(to - from);
    }
  };
  await Promise.all(hands.map(work));
  return rows.joined();
}
