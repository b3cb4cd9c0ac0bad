/**
 * One temperature for one body: heat in, heat stored, heat out.
 *
 * C dT/dt = Q + sum UA (T_around - T). Over a step with everything else held it is solved exactly:
 * T goes to the balance T_b = (Q + sum UA T_around) / sum UA as exp(-dt sum UA / C), so no step is too long.
 */

/** Conductance in W/K to something at a temperature in Cel. */
export type Neighbour = readonly [wPerK: number, atC: number];

/** The temperature after `stepS`, in Cel. `capacityJPerK` above 0; `heatW` may be negative. */
export function afterStep(
  nowC: number,
  capacityJPerK: number,
  heatW: number,
  neighbours: readonly Neighbour[],
  stepS: number,
): number {
  let conductanceWPerK = 0;
  let drivenW = heatW;
  for (const [wPerK, atC] of neighbours) {
    conductanceWPerK += wPerK;
    drivenW += wPerK * atC;
  }
  if (conductanceWPerK === 0) return nowC + (heatW * stepS) / capacityJPerK;
  const balanceC = drivenW / conductanceWPerK;
  return balanceC + (nowC - balanceC) * Math.exp((-stepS * conductanceWPerK) / capacityJPerK);
}

/** Any first-order lag: towards `target`, 63 % of the way in `lagS`. */
export const lagged = (now: number, target: number, lagS: number, stepS: number): number =>
  target + (now - target) * Math.exp(-stepS / lagS);
