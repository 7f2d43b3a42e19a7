/** The household's wants in one draw: what the kernel serves or leaves unserved. */

/** The first `count` of `at`. */
export interface MinuteList {
  count: number;
  readonly at: Int32Array;
}

/** What one circuit would draw if it had power, thermostats aside. */
export interface CircuitWant {
  /** Whether it may want anything: false where only thermostats hang on it. */
  readonly wants: boolean;
  /** Watts wanted, one value per minute (the minute's mean). */
  readonly demandW: Float32Array;
  /** Largest extra watts of a start in the minute (starting less running), or undefined when nothing on it starts. */
  readonly startExtraW: Float32Array | undefined;
  /** The minutes with such a start, each once, in the order they were noted. */
  readonly starts: MinuteList;
  /** Most extra watts of a start in each hour; undefined likewise. */
  readonly hourExtraW: Float32Array | undefined;
  /** 1 for each hour of the outage in which its watts change or something starts; all minutes of another want the same. */
  readonly busyHours: Uint8Array;
  /** Watt-minutes of each hour, and its least and most watts. */
  readonly hourWmin: Float64Array;
  readonly leastW: Float32Array;
  readonly mostW: Float32Array;
}

/** A thermostatic appliance: its power follows a temperature that the kernel steps. */
export interface ThermostatWant {
  readonly circuitIndex: number;
  readonly applianceIndex: number;
  readonly runningW: number;
  /** Starting less running watts, ≥ 0. */
  readonly startExtraW: number;
  /** +1 cools (runs when warm), -1 heats (runs when cold). */
  readonly sign: 1 | -1;
  readonly setC: number;
  readonly bandC: number;
  readonly surroundings: 'indoors' | 'outdoors' | 'garage';
  readonly surroundingsOffsetC: number;
  readonly timeConstantMinutes: number;
  /** °C a minute that running moves it, > 0, in the direction of `sign` (cooling lowers). */
  readonly pullCPerMinute: number;
  readonly limitC: number | undefined;
  /** This draw: temperature at the start, and whether it is calling for power then. */
  readonly startC: number;
  readonly startCalling: boolean;
}

export interface UsageDraw {
  readonly minutes: number;
  /** One per circuit, in the scenario's order. */
  readonly circuits: readonly CircuitWant[];
  readonly thermostats: readonly ThermostatWant[];
}
