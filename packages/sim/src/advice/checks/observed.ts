/** What some draws showed of a household with everything switched on. Draws count those in which it happened. */

/** The highest minute of something, and when. */
export interface Peak {
  readonly watts: number;
  /** Local civil time, `2026-10-12 18:07`. */
  readonly at: string;
  readonly draw: number;
}

export interface ObservedUnit {
  readonly id: string;
  /** The worst minute's mean load, and the circuits that made most of it. */
  readonly worstMinute: Peak;
  readonly worstMinuteCircuits: readonly { readonly id: string; readonly watts: number }[];
  /** Highest mean load of any three hours. */
  readonly worstThreeHoursW: number;
  readonly meanLoadW: number;
  /** Draws in which the load stayed above the continuous rating for longer than the unit bears. */
  readonly overloadDraws: number;
  /** The same while everybody is asleep. */
  readonly overloadAsleepDraws: number;
  /** Draws with a start above the surge rating; and while everybody is asleep. */
  readonly surgeDraws: number;
  readonly surgeAsleepDraws: number;
  /** Highest mean minute asked of the modules, after what the sun gives. */
  readonly worstDischargeW: number;
  readonly dischargeDraws: number;
  readonly solarAvailableWhPerDay: number;
  readonly solarClippedWhPerDay: number;
  /** Around the modules. */
  readonly lowestPlaceC: number;
  readonly tooColdToChargeHoursFraction: number;
}

export interface ObservedCircuit {
  readonly id: string;
  readonly worstMinute: Peak;
  readonly worstThreeHoursW: number;
  /** For each unit that feeds it: highest load of the unit in a minute in which something on this circuit starts. */
  readonly starts: readonly {
    readonly unitId: string;
    readonly watts: number;
    readonly at: string;
    readonly surgeDraws: number;
  }[];
}

/** Two circuits that share a neutral: highest minute's sum and difference, W. */
export interface ObservedPair {
  readonly first: string;
  readonly second: string;
  readonly worstSumW: number;
  readonly worstDifferenceW: number;
}

/** One hand-carried strategy at night. */
export interface ObservedNights {
  readonly strategyId: string;
  /** Draws in which a level was passed while everybody was asleep and the circuits it drops were still on. */
  readonly dueAsleepDraws: number;
  /** Longest wait until somebody was up, minutes; 0 when there was none. */
  readonly longestWaitMinutes: number;
  /** Draws in which a bank ran empty while everybody was asleep. */
  readonly emptyAsleepDraws: number;
}

export interface Observed {
  readonly draws: number;
  /** Days of each draw. */
  readonly days: number;
  readonly units: readonly ObservedUnit[];
  readonly circuits: readonly ObservedCircuit[];
  readonly pairs: readonly ObservedPair[];
  /** Highest minute's neutral current with the legs half a cycle apart; and of all 120 V circuits on one unit. */
  readonly worstNeutralA: number;
  readonly worstAllOnOneUnitW: number;
  readonly lowestOutdoorC: number;
  readonly nights: readonly ObservedNights[];
}
