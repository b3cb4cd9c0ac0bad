/** Metal temperature worked out from air, and what a heat is worth. */
import { describe, expect, test } from 'vitest';
import { carbonSteel, evaporationLoadJPerM2, loadAsRiseK } from '#rules/process/heating.ts';
import { quality } from '#rules/signal/quality.ts';
import { compiledBy, KindDrive, msPerH, msPerMin } from './drive-kind.ts';

const sheet = {
  time_constant: '5 min',
  from_trial_run: true,
  volume_per_area: '1.5 mm',
  entry: '20 Cel',
};
const oven = (written: object = sheet): KindDrive =>
  new KindDrive('part-temperature', { ...written }, ['air', 'loaded']);
/** Air of one temperature each 10 s, the load in at 10 s. */
const inAir = (drive: KindDrive, airC: number, forMs: number): KindDrive => {
  drive.values('air', [0, airC]).values('loaded', [0, 0], [10_000, 1]);
  for (let at = 20_000; at <= 10_000 + forMs; at += 10_000) drive.values('air', [at, airC]);
  return drive.advance(12_000 + forMs);
};

describe('part temperature', () => {
  test.each([
    // T = T_air + (T_0 - T_air) exp(-t/tau), tau 5 min: Çengel, Heat Transfer, chapter 4.
    [5, 100 - 80 * Math.exp(-1)],
    [10, 100 - 80 * Math.exp(-2)],
    [30, 100 - 80 * Math.exp(-6)],
  ])('after %d min in air of 100 °C', (minutes, expected) => {
    const { value, quality: code } = inAir(oven(), 100, minutes * msPerMin).last;
    // Readings are taken 0.1 s after they come, and the load's first second counts from there.
    expect(Math.abs(value - expected)).toBeLessThan(0.4);
    expect(code).toBe(quality.good);
  });
  test.each([
    ['no trial run', { ...sheet, from_trial_run: false }],
    ['nobody knows how thick', { time_constant: '5 min', from_trial_run: true, entry: '20 Cel' }],
    // Bi = rho c (V/A)^2/(tau k) = 0.41 for 40 mm and 5 min.
    ['too thick to warm as one', { ...sheet, volume_per_area: '40 mm' }],
  ])('uncertain: %s', (_, written) => {
    expect(inAir(oven(written), 100, msPerMin).last.quality).toBe(quality.unproven);
  });
  test('between loads it is that of a part at the door, and the next load begins there', () => {
    const drive = inAir(oven(), 100, 10 * msPerMin);
    drive.values('loaded', [20 * msPerMin, 0]).advance(21 * msPerMin);
    expect(drive.last.value).toBe(20);
    drive.values('loaded', [22 * msPerMin, 1]).values('air', [22 * msPerMin + 10_000, 100]);
    expect(drive.advance(23 * msPerMin).last.value).toBeLessThan(25);
  });
  test('of a load that was in already nobody knows how warm it was', () => {
    const drive = oven().values('air', [0, 100]).values('loaded', [0, 1]).advance(msPerMin);
    expect(drive.last.quality).toBe(quality.unobserved);
  });
  test('the water of the film holds it back by as much heat', () => {
    // 67 µm wet of 1.10 g/mL and 35 % solids on one side of 1 mm of steel, heated on that side.
    const rise = loadAsRiseK(evaporationLoadJPerM2(67, 1.1, 35, 45)!, carbonSteel, 0.001)!;
    const wet = { ...sheet, evaporation: `${rise.toFixed(2)} K`, wet_at: '45 Cel' };
    const dry = inAir(oven(), 100, 4 * msPerMin).last.value;
    const held = inAir(oven(wet), 100, 4 * msPerMin);
    expect(dry).toBeGreaterThan(60);
    expect(held.last.value).toBe(45);
    // Held at 45 °C it takes 55 K/5 min; the water is gone after its rise over that, then it warms again.
    const freeAfterMin = 5 * (Math.log(80 / 55) + rise / 55);
    const after = inAir(oven(wet), 100, (freeAfterMin + 5) * msPerMin).last.value;
    expect(Math.abs(after - (100 - 55 * Math.exp(-1)))).toBeLessThan(1);
  });
  test('a gap warms it on, and says that nobody saw', () => {
    const drive = inAir(oven(), 100, 5 * msPerMin);
    drive
      .bad('air', 6 * msPerMin)
      .values('air', [30 * msPerMin, 100])
      .advance(31 * msPerMin);
    expect(drive.last.value).toBeGreaterThan(99);
    expect(drive.last.quality).toBe(quality.unobserved);
  });
  test('goes on after a restart', () => {
    const through = inAir(oven(), 100, 5 * msPerMin).restarted();
    const whole = inAir(oven(), 100, 5 * msPerMin);
    for (const drive of [through, whole]) drive.values('air', [7 * msPerMin, 100]).advance(msPerH);
    expect(through.last).toEqual(whole.last);
  });
  test.each([
    ['entry', { time_constant: '5 min' }],
    ['wet_at', { ...sheet, evaporation: '60 K' }],
    ['time_constant', { ...sheet, time_constant: '0 s' }],
  ])('asks for %s', (_, written) => {
    const names = ['air', 'loaded'];
    expect(compiledBy('part-temperature', written, names).problems).toHaveLength(1);
  });
});

describe('heat dose', () => {
  const bake = (written: object): KindDrive =>
    new KindDrive('heat-dose', { reference: '120 Cel', ...written }, ['temperature', 'loaded']);
  const held = (drive: KindDrive, temperatureC: number): number =>
    drive
      .values('temperature', [0, temperatureC])
      .values('loaded', [0, 0], [10_000, 1])
      .values('temperature', [10_000 + 10 * msPerMin, temperatureC])
      .advance(msPerH).last.value;
  test('at the reference a minute is a minute', () => {
    expect(held(bake({ z_value: '20 K' }), 120)).toBe(600);
  });
  test('one z above it is worth ten, one below a tenth (definition of z)', () => {
    expect(held(bake({ z_value: '20 K' }), 140)).toBe(6_000);
    expect(held(bake({ z_value: '20 K' }), 100)).toBe(60);
  });
  test('by activation energy (Arrhenius)', () => {
    const factor = Math.exp((90_000 / 8.314462618) * (1 / 393.15 - 1 / 403.15));
    expect(held(bake({ activation_energy: '90 kJ/mol' }), 130)).toBe(Math.round(600 * factor));
  });
  test('begins anew with each load', () => {
    const drive = bake({ z_value: '20 K' });
    held(drive, 120);
    drive.values('loaded', [msPerH, 0], [msPerH + msPerMin, 1]);
    drive.values('temperature', [msPerH + 2 * msPerMin, 120]).advance(2 * msPerH);
    expect(drive.last.value).toBe(60);
  });
  test('wants one of activation energy and z, and either in its own unit', () => {
    for (const written of [
      {},
      { activation_energy: '90 kJ/mol', z_value: '20 K' },
      { z_value: '20 %' },
    ])
      expect(
        compiledBy('heat-dose', { reference: '120 Cel', ...written }, ['temperature']).problems
          .length,
      ).toBeGreaterThan(0);
  });
});
