/** The rules that findings rest on. Sections of the US National Electrical Code (NEC, NFPA 70) of 2023 by number. */

/** How firm the ground is: a published standard; a fact of the trade; a standard quoted from memory. */
export type RuleStanding = 'published' | 'common practice, no source' | 'from memory';

/** A rule that a scenario is held to, and where it comes from. */
export interface CheckRule {
  /** Standard and section, or "common practice, no source". */
  readonly source: string;
  /** What it asks for, in our words. */
  readonly says: string;
  readonly standing: RuleStanding;
}

function published(source: string, says: string): CheckRule {
  return { source, says, standing: 'published' };
}

function practice(says: string): CheckRule {
  return { source: 'common practice, no source', says, standing: 'common practice, no source' };
}

export const CHECK_RULES = {
  continuousRating: {
    source: 'NEC article 702, capacity with manual transfer; section number 702.4 from memory',
    says: 'the source must carry everything that is meant to run at one time',
    standing: 'from memory',
  },
  singleLargestLoad: published(
    'NEC 710.15(A)',
    'a stand-alone source must be able to carry at least the largest single appliance connected',
  ),
  surge: practice('a start must fit under the unit’s surge rating together with what else is running'),
  continuousLoad: published(
    'NEC 210.19(A), 210.20(A), 215.2(A), 215.3',
    'breaker and wire carry 125 % of what stays on for three hours or more, and 100 % of the rest',
  ),
  branchLoad: practice(
    'a breaker opens when what is switched on together stays above its rating; plug-in appliances are not held to it by the code',
  ),
  sourceWires: published(
    'NEC 710.15(B) with 215.2(A) and 215.3',
    'wires and breaker from a stand-alone source to the panel are sized for its rated output, 125 % of it where it lasts three hours',
  ),
  inlet: practice(
    'plugs and inlets carry their rating, and 80 % of it where the load lasts three hours or more',
  ),
  wireBreaker: published(
    'NEC Table 310.16, 110.14(C), 240.4(B) and (D)',
    'a breaker may not exceed what the wire behind it may carry',
  ),
  cord: published('NEC Table 400.5(A)(1), 240.5', 'a cord may not carry more than its table says'),
  largeCord: {
    source: 'NEC Table 400.5(A)(1), from memory for 8 AWG and larger',
    says: 'a cord may not carry more than its table says',
    standing: 'from memory',
  },
  voltageDrop: published(
    'NEC 210.19(A) informational note 4, 215.2(A) informational note 2',
    'up to 3 % lost on a circuit and 5 % in all gives reasonable efficiency; advice, not a requirement',
  ),
  split240: published(
    'NEC 710.15(C)',
    'one 120 V source may feed a 120/240 V panel only where nothing needs 240 V and no circuits share a neutral',
  ),
  pair240: practice('a 240 V circuit takes half its power from each leg and needs both'),
  sharedNeutral: published(
    'NEC 710.15(C), 210.4',
    'circuits that share a neutral must be on opposite legs, open together, and never hang on one 120 V source',
  ),
  neutral: published('NEC 220.61', 'the neutral must carry the greatest imbalance of the legs'),
  modules: practice(
    'the modules together must deliver what the inverter asks for, and take what charges them',
  ),
  moduleMix: practice('modules that work side by side should be alike in make, size and age'),
  coldString: published(
    'NEC 690.7, Table 690.7(A)',
    'the open-circuit voltage of a string at the lowest expected temperature may not exceed what the equipment bears, nor 600 V on a one- or two-family house',
  ),
  hotString: practice('in heat the working voltage of a string should stay within the input’s window'),
  arrayPower: practice('an array somewhat above its input’s power wastes little; far above, much is clipped'),
  chargerFeed: published(
    'NEC 210.20(A)',
    'charging lasts for hours: its feed carries 125 % of what the charger draws',
  ),
  cold: practice('lithium iron phosphate cells must not be charged below about 0 °C; makers’ guidance'),
  strategy: practice('a rule must be able to act, and to take back what it did'),
  night: practice('nobody throws switches asleep; what falls due at night waits until somebody is up'),
} as const satisfies Readonly<Record<string, CheckRule>>;
