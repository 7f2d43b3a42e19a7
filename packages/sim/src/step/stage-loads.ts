/**
 * What each unit must carry in each minute, for one set of groups that are on.
 *
 * A stage is met again and again, by several strategies; its minutes are added up once, a day at a time, when first
 * needed.
 */
import type { CircuitGroup } from './household.ts';

/** Minutes added up together. */
export const CHUNK_MINUTES = 1440;
/** Values per minute: watts of unit 0, of unit 1, largest extra watts of a start on unit 0, on unit 1. */
export const STAGE_STRIDE = 4;

/** Where 120 V circuits hang: each on its own unit, or all on unit 0, or all on unit 1. */
export type Feeding = 'own' | 0 | 1;

export interface Stage {
  /** STAGE_STRIDE values per minute; a chunk is valid once `stageChunk` was asked for it. */
  readonly loads: Float32Array;
  readonly groupsOn: Uint8Array;
  readonly feeding: Feeding;
  readonly ready: Uint8Array;
}

export class StageLoads {
  private readonly stages = new Map<string, Stage>();
  private readonly spare: Stage[] = [];

  constructor(
    private readonly groups: readonly CircuitGroup[],
    private readonly groupW: readonly Float32Array[],
    private readonly groupExtraW: readonly (Float32Array | undefined)[],
    private readonly minutes: number,
  ) {}

  /** Makes ready for another draw; keeps the buffers. */
  forget(): void {
    this.spare.push(...this.stages.values());
    this.stages.clear();
  }

  stage(groupsOn: Uint8Array, feeding: Feeding): Stage {
    const key = groupsOn.join('') + String(feeding);
    let stage = this.stages.get(key);
    if (stage === undefined) {
      const old = this.spare.pop();
      stage = {
        loads: old?.loads ?? new Float32Array(this.minutes * STAGE_STRIDE),
        groupsOn: groupsOn.slice(),
        feeding,
        ready: old?.ready.fill(0) ?? new Uint8Array(Math.ceil(this.minutes / CHUNK_MINUTES)),
      };
      this.stages.set(key, stage);
    }
    return stage;
  }

  /** Sees to it that the chunk that holds `minute` is added up. */
  readyAt(stage: Stage, minute: number): void {
    const chunk = Math.floor(minute / CHUNK_MINUTES);
    if (stage.ready[chunk] === 1) return;
    stage.ready[chunk] = 1;
    const from = chunk * CHUNK_MINUTES;
    const to = Math.min(from + CHUNK_MINUTES, this.minutes);
    stage.loads.fill(0, from * STAGE_STRIDE, to * STAGE_STRIDE);
    for (let g = 0; g < this.groups.length; g++) if (stage.groupsOn[g] === 1) this.addGroup(stage, g, from, to);
  }

  private addGroup(stage: Stage, g: number, from: number, to: number): void {
    const group = this.groups[g]!;
    const watts = this.groupW[g]!;
    const extra = this.groupExtraW[g];
    const halves = group.is240V;
    const units = halves ? [0, 1] : [stage.feeding === 'own' ? group.unit : stage.feeding];
    for (const unit of units) {
      addColumn(stage.loads, unit, watts, halves ? 0.5 : 1, from, to);
      if (extra !== undefined) largerColumn(stage.loads, 2 + unit, extra, halves ? 0.5 : 1, from, to);
    }
  }
}

function addColumn(loads: Float32Array, column: number, watts: Float32Array, share: number, from: number, to: number): void {
  for (let m = from, at = from * STAGE_STRIDE + column; m < to; m++, at += STAGE_STRIDE) loads[at] = loads[at]! + share * watts[m]!;
}

function largerColumn(loads: Float32Array, column: number, extra: Float32Array, share: number, from: number, to: number): void {
  for (let m = from, at = from * STAGE_STRIDE + column; m < to; m++, at += STAGE_STRIDE) {
    const w = share * extra[m]!;
    if (w > loads[at]!) loads[at] = w;
  }
}
