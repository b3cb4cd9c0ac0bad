/** What people read at the dip tank with hand instruments and their eyes, and how. */
import type { StationSignal } from './station.ts';

const byHand = { byHand: true, stuckAfter: null } as const;
const seen = { unit: '1', resolution: 1, range: ['0 1', '1 1'] } as const;

export const dipTankHandSignals: readonly StationSignal[] = [
  {
    name: 'density',
    unit: 'g/mL',
    resolution: 0.1,
    range: ['0.8 g/mL', '2 g/mL'],
    meaning: 'density of the bath, of a sample without foam, stirred',
    where:
      'hydrometer or pycnometer in a sample from the moving stream; foam settled, stirred, read 20 s after it rests; with it enter sample-temperature',
    ...byHand,
  },
  {
    name: 'sample-temperature',
    unit: 'Cel',
    resolution: 0.1,
    range: ['0 Cel', '60 Cel'],
    meaning: 'temperature of the sample as its density was read',
    where: 'thermometer in that sample, before it is poured back',
    ...byHand,
  },
  {
    name: 'panel-film',
    unit: 'um',
    resolution: 0.0001,
    range: ['0 um', '500 um'],
    meaning: 'dry film of a panel or part drawn from the tank',
    where:
      'film gauge on the dried panel, less its base reading on the bare metal of the same batch; several places, their mean',
    ...byHand,
  },
  {
    name: 'ph',
    unit: '[pH]',
    resolution: 0.01,
    range: ['0 [pH]', '14 [pH]'],
    meaning: 'pH of the bath',
    where: 'pH meter, calibrated at each use, in a sample at the bath’s temperature',
    ...byHand,
  },
  {
    name: 'conductivity',
    unit: 'uS/cm',
    resolution: 1,
    range: ['0 uS/cm', '20000 uS/cm'],
    meaning: 'conductivity of the bath, which rises with what parts carry in',
    where: 'conductivity meter at its reference temperature, in the same sample',
    ...byHand,
  },
  {
    name: 'viscosity',
    unit: 'mPa.s',
    resolution: 1,
    range: ['0 mPa.s', '100000 mPa.s'],
    meaning: 'viscosity of the bath at one spindle, speed and temperature',
    where:
      'rotational viscometer, always the same spindle, speed and temperature; a flow cup misleads with a dispersion',
    ...byHand,
  },
  {
    name: 'foam',
    ...seen,
    meaning: '1 where foam stands on the bath, else 0',
    where: 'by eye at the tank, from outside the guard',
    ...byHand,
  },
  {
    name: 'skin',
    ...seen,
    meaning: '1 where skin or lumps are seen on the bath, else 0',
    where: 'by eye at the tank, from outside the guard, in the corners where it stands still',
    ...byHand,
  },
  {
    name: 'make-up-conductivity',
    unit: 'uS/cm',
    resolution: 0.1,
    range: ['0 uS/cm', '2000 uS/cm'],
    meaning: 'conductivity of the water that is put in',
    where: 'meter in the deionised water’s line, or a sample at each make-up',
    ...byHand,
  },
];
