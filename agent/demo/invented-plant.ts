/**
 * The numbers of a plant that does not exist. All of them are invented for the demo line: chosen
 * so that it behaves like a line, measured on none. Nothing here is a limit or a recommendation.
 */

/** Physical constants, from memory of any handbook; a demo needs no more digits. */
export const nature = {
  waterJPerKgK: 4_186,
  iceJPerKgK: 2_100,
  meltingJPerKg: 334_000,
  /** At 60 Cel or so. */
  evaporationJPerKg: 2_360_000,
  steelJPerM3K: 7_850 * 480,
  airJPerM3K: 1_060,
} as const;

export const hallPlant = {
  meanC: 21,
  /** Warmest at 15 h, coldest at 3 h. */
  dailySwingK: 1.5,
  meanRhPercent: 46,
  /** It is always winter beside this plant. */
  outsideMeanC: -11,
  outsideSwingK: 3,
} as const;

export const storePlant = {
  airJPerK: 400_000,
  wallsWPerK: 250,
  gateWPerK: 4_000,
  heaterWMax: 12_000,
  heaterWPerK: 3_000,
  /** By hand it gives more, until its own cut-out. */
  byHandW: 28_000,
  cutOutC: 38,
  setC: 18,
  /** The pail of water that the wall sensor sits in. */
  pailKg: 2,
  /** Still air, the draught of the open gate, the heater's fan at full. */
  pailWPerK: { still: 1.2, draught: 8, fan: 5 },
  /** How much of the air at the wall is outside air while the gate is open. */
  draughtShare: 0.85,
} as const;

export const mixerPlant = {
  targetPerMin: 25,
  fastPerMin: 37,
  slowPerMin: 16,
  shaftLagS: 4,
  fullMm: 820,
  /** A drum is changed here. */
  changeMm: 300,
  /** A drum 0.58 m wide, 0.3 L a minute drawn. */
  drawMmPerS: 1.2 / 60,
  hurriedDrawMmPerS: 3,
  lowestMm: 205,
} as const;

export const airPlant = {
  headerBar: 6.9,
  saggedBar: 4.9,
  headerLagS: 12,
  dewPointC: -2,
  wetDewPointC: 12,
  dryerLagS: 240,
  /** The coldest drop hangs by the gate. */
  pipeBelowHallK: 5,
  separatorBar: 0.14,
  loadedBar: 0.44,
  separatorLagS: 60,
} as const;

export const boothPlant = {
  faceMPerS: 0.62,
  slippedMPerS: 0.36,
  fanLagS: 5,
  /** Drop across the clean filter at the wanted face velocity; it follows the square of it. */
  cleanFilterPa: 60,
  loadedShare: 3.6,
  missingShare: 0.3,
  potBar: 2,
  potHighBar: 2.6,
  potRatingBar: 5.2,
  potLagS: 5,
  atomisingBar: 3.2,
  /** Spraying so long, then nothing while the carriers change. */
  spraySPerCycle: 270,
  cycleS: 300,
} as const;

export const ovenPlant = {
  setC: 78,
  /** Air and sheet metal of one zone. */
  zoneJPerK: 90_000,
  wallsWPerK: 60,
  exhaustM3PerS: 0.25,
  heaterWMax: 60_000,
  heaterWPerK: 4_000,
  /** Steel bushings: volume over coated surface. */
  metalM: 0.003,
  filmWPerM2K: 40,
  /** Still air in the hall takes the heat off more slowly. */
  hallWPerM2K: 12,
  partsM2: 4,
  /** Water in the wet film at entry. */
  waterKgPerM2: 0.045,
  /** Drying coefficient over the difference of vapour pressures. */
  dryingKgPerM2SPa: 9e-9,
  /** A rack is so long in the oven; the next goes in at the beginning of the next cycle. */
  dwellS: 960,
  cycleS: 1_200,
  exhaustPa: 140,
  exhaustLagS: 6,
  /** Faults. */
  /** Of the whole oven, and what zone 2 has beyond that. */
  runawayK: 13,
  runawayZone2K: 11,
  setBackK: 15,
  sensorOffK: 8,
} as const;

export const residuePlant = {
  /** The floor below the rack path, mostly at the temperature of the air, a little above. */
  floorJPerK: 12_000,
  floorToAirWPerK: 40,
  floorRadiantW: 80,
  /** A shroud has slipped: burner gas flows along the floor, and warms what is beside it. */
  hotGasK: 46,
  hotGasLagS: 400,
  shroudJPerK: 9_000,
  shroudToAirWPerK: 30,
  shroudRadiantW: 150,
  /** A bed of overspray in the exhaust filter, and what it gives off once it reacts. */
  filterJPerK: 6_000,
  filterToAirWPerK: 14,
  reactingW: 700,
  reactingLagS: 420,
  binJPerK: 10_000,
  binToHallWPerK: 8,
  binReactingW: 220,
  /** Racks stacked in the hall; straight from the oven they are hot in the middle. */
  stackJPerK: 60_000,
  stackToHallWPerK: 40,
  hotStackC: 64,
  thicknessMm: 0.55,
  growthMmPerH: 0.004,
} as const;

export const tankPlant = {
  setC: 23,
  capacityJPerK: 4_186 * 400,
  hallWPerK: 60,
  exchangerWPerK: 9_000,
  /** The exchanger's valve stuck open to the hot loop. */
  stuckW: 9_000,
  weirFallMm: 14,
  fallenWeirMm: 46,
  flowLPerMin: 42,
  lostFlowLPerMin: 12,
  cleanFilterBar: 0.18,
  cloggedFilterBar: 0.85,
  tornFilterBar: 0.04,
  withdrawalMPerMin: 1,
  fastWithdrawalMPerMin: 1.25,
  lagS: 30,
  solidsPercent: 25,
  thinnedPercent: 23.3,
} as const;

export const prepPlant = {
  rinseUSPerCm: 8,
  dirtyUSPerCm: 34,
  rinseLagS: 90,
  blastBar: 5.6,
} as const;

export const coatedPlant = { dampPercent: 76, lagS: 200 } as const;

export const pressPlant = {
  setC: 162,
  capacityJPerK: 260_000,
  heaterWPerK: 2_500,
  heaterWMax: 22_000,
  hallWPerK: 22,
  /** Every shot takes this out, inserts and rubber being cold. */
  shotJ: 900_000,
  shotEveryS: 420,
  /** A controller that is set too high. */
  overSetK: 14,
} as const;

export const preBakePlant = {
  setC: 82,
  coldK: 20,
  apartK: 14,
  zoneLagS: 120,
  dwellS: 960,
} as const;

/** What it is, what the fault makes of it, and how slowly. Units are those of the signals. */
export const steadyPlant = {
  potLevelMm: { usual: 180, gone: 35, fault: 'pot-drawn-low', lagS: 40 },
  paddlePerMin: { usual: 32, gone: 0, fault: 'pot-paddle-stands', lagS: 3 },
  partAtGunC: { usual: 51, gone: 33, fault: 'cold-parts-at-gun', lagS: 30 },
  boothAirK: { usual: 0, gone: -7, fault: 'supply-air-unheated', lagS: 60 },
  boothDampPercent: { usual: 0, gone: 34, fault: 'supply-air-unheated', lagS: 60 },
  preparedMetalK: { usual: -2, gone: -14, fault: 'prepared-metal-cold', lagS: 60 },
  cavityApartK: { usual: 0, gone: 7.2, fault: 'cavity-apart', lagS: 40 },
  pressMPa: { usual: 12, gone: 8, fault: 'press-pump-weak', lagS: 5 },
} as const;
