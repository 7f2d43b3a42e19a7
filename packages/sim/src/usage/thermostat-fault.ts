import { pullCPerMinuteOf, type ThermostatAppliance } from './thermostat.ts';

/**
 * What makes a thermostatic appliance impossible, in a sentence for the person who wrote it; undefined when nothing
 * does. It is impossible when the surroundings its duty is stated for would never make it run, when its limit lies
 * inside its own band, or when a minute, the step of the simulation, is too long for its time constant or its band.
 */
export function thermostatFault(appliance: ThermostatAppliance): string | undefined {
  const { does, setC, bandC, limitC, dutySurroundingsC, surroundingsOffsetC } = appliance;
  const sign = does === 'cools' ? 1 : -1;
  const startsAtC = setC + sign * bandC;
  const surroundingsC = dutySurroundingsC + surroundingsOffsetC;
  if (sign * (surroundingsC - startsAtC) <= 0) {
    const [wanted, rule] = does === 'cools' ? ['warmer', 'raise'] : ['colder', 'lower'];
    return (
      `it ${does} to ${celsius(setC)} and starts at ${celsius(startsAtC)}, so it runs only in ${wanted} surroundings; ` +
      `dutySurroundingsC with surroundingsOffsetC makes ${celsius(surroundingsC)}: ${rule} dutySurroundingsC or change setC`
    );
  }
  if (limitC !== undefined && sign * (limitC - startsAtC) <= 0) {
    return (
      `its limitC of ${celsius(limitC)} is reached before it starts at ${celsius(startsAtC)}, so its need would be unmet ` +
      `in every cycle: move limitC ${does === 'cools' ? 'above' : 'below'} ${celsius(startsAtC)} or narrow bandC`
    );
  }
  if (appliance.timeConstantHours * 60 < 1)
    return `its timeConstantHours of ${appliance.timeConstantHours} h is less than a minute, the step of the simulation`;
  const pull = pullCPerMinuteOf(appliance);
  const drift = pull * appliance.dutyFraction;
  if (Math.max(drift, pull - drift) > 2 * bandC) {
    return (
      `it crosses its band of ${celsius(2 * bandC)} within a minute, the step of the simulation: ` +
      `widen bandC or check timeConstantHours (${appliance.timeConstantHours} h)`
    );
  }
  return undefined;
}

function celsius(value: number): string {
  return `${Math.round(value * 100) / 100} °C`;
}
