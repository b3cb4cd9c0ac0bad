/**
 * What the trade watches for, station by station, and the rules that do: docs/alarms.md is made of it.
 * Common practice, no published source; basis of each number on the station's page.
 */
export interface AlarmRow {
  readonly station: string;
  readonly row: string;
  /** A `*` stands for a number: one rule for each zone, cavity or sensor. */
  readonly rules: readonly string[];
}

const row = (station: string, words: string, rules: string): AlarmRow => ({
  station,
  row: words,
  rules: rules.split(' '),
});

const ours = '(priority and time to respond: our judgement)';

export const alarmRows: readonly AlarmRow[] = [
  row(
    'adhesive-store',
    'cold at the wall or bottom of a container',
    'cold-adhesive cold-adhesive-bottom cold-adhesive-probe freeze-approaching',
  ),
  row(
    'adhesive-store',
    'freezing suspected, held by container',
    'freeze-suspected freeze-suspected-bottom freeze-suspected-probe freeze-seen',
  ),
  row('adhesive-store', 'warm store', 'warm-store'),
  row(
    'adhesive-store',
    'freight outside its range, or unlogged in frost',
    'freight-out-of-range freight-out-of-range-hot freight-unlogged freight-unlogged-season way-too-cold',
  ),
  row('adhesive-store', 'shelf life', 'shelf-life opened-life let-down-life'),
  row('drum-mixer', 'agitator stopped', 'agitator-stopped agitator-rest'),
  row('drum-mixer', 'agitator fast', 'agitator-fast'),
  row('drum-mixer', 'agitator slow', 'agitator-slow'),
  row('drum-mixer', 'drawn before it was mixed', 'drawn-unmixed'),
  row('drum-mixer', 'blade uncovered', 'blade-uncovered'),
  row('drum-mixer', `container on hold is connected ${ours}`, 'container-held'),
  row('dip-tank', 'temperature of the bath', 'bath-temperature'),
  row('dip-tank', 'solids of the bath', 'bath-solids bath-solids-density'),
  row('dip-tank', 'fall at the weir', 'weir-fall'),
  row('dip-tank', 'circulation lost', 'circulation-lost'),
  row('dip-tank', 'filter loaded or torn', 'filter-loaded filter-torn'),
  row('dip-tank', 'withdrawal speed', 'withdrawal'),
  row('dip-tank', 'film of a panel, first part after a stop', 'film first-off-missing'),
  row('dip-tank', `rack or lot on hold is used ${ours}`, 'rack-held lot-held'),
  row(
    'dip-tank',
    'what hands find in the bath',
    'bath-ph bath-conductivity bath-viscosity bath-foam bath-skin make-up-water',
  ),
  row('spray-booth', 'exhaust airflow while spraying', 'exhaust-airflow exhaust-lost survey-late'),
  row('spray-booth', 'booth filter loaded or missing', 'filter-loaded filter-missing'),
  row(
    'spray-booth',
    'pot pressure and its rating',
    'pot-pressure pot-rating relief-late pot-unstirred dip-tube-near',
  ),
  row('spray-booth', 'atomising air', 'atomising-air'),
  row('spray-booth', 'part at the gun too cold or too hot', 'part-at-gun'),
  row('spray-booth', 'film out of its range', 'film film-total film-edge film-chart panel-late'),
  row(
    'spray-booth',
    'flush late, tip idle',
    'flush-late tip-idle tip-idle-said first-off-missing first-off-after-change',
  ),
  row('spray-booth', 'gun worn', 'needle-worn cap-worn'),
  row('spray-booth', 'climate of the booth', 'booth-climate booth-humidity'),
  row('spray-booth', `container or rack on hold is used ${ours}`, 'container-held rack-held'),
  row('compressed-air', 'pressure dew point', 'air-dew-point pipe-margin'),
  row('compressed-air', 'blotter test (ASTM D4285) fails', 'blotter-failed blotter-late'),
  row('compressed-air', 'header pressure low', 'header-low'),
  row('compressed-air', 'separator loaded, or its round late', 'separator-dp separator-round-late'),
  row('primer-pre-bake', 'primer under-baked', 'under-baked'),
  row('primer-pre-bake', 'primer over-baked', 'over-baked over-dosed'),
  row('primer-pre-bake', 'interval to the cover coat', 'cover-too-soon cover-too-late'),
  row(
    'primer-pre-bake',
    'zone off its setting, zones apart',
    'zone-off-* zones-apart profile-late',
  ),
  row(
    'primer-pre-bake',
    'conveyor stopped, exhaust lost',
    'conveyor-stopped exhaust-lost exhaust-weak',
  ),
  row('drying-oven', 'under-dried', 'under-dried'),
  row('drying-oven', 'over-baked', 'over-baked over-dosed'),
  row('drying-oven', 'conveyor stopped while loaded', 'conveyor-stopped'),
  row('drying-oven', 'exhaust lost', 'exhaust-lost exhaust-weak'),
  row('drying-oven', 'zone too hot', 'zone-*-high'),
  row('drying-oven', 'two sensors disagree', 'sensors-disagree-* profile-late'),
  row('residue', 'early', 'early approaching'),
  row('residue', 'act', 'act act-thick'),
  row('residue', 'at the limit', 'at-limit'),
  row('residue', 'heating itself', 'self-heating'),
  row('residue', 'residue thick, cleaning late', 'residue-thick cleaning-late'),
  row(
    'residue',
    'waste warm, bin not emptied, racks stacked hot',
    'bin-warm bin-unemptied stack-hot',
  ),
  row('coated-store', 'layover', 'layover'),
  row('coated-store', 'humidity and dew-point margin', 'humid dew-margin'),
  row('coated-store', 'cold parts into a warm room', 'cold-into-warm'),
  row('coated-store', 'hot store', 'hot-store'),
  row('coated-store', `rack on hold goes into the press ${ours}`, 'rack-held'),
  row('press', 'mould cold', 'mould-cold-*'),
  row('press', 'mould hot', 'mould-hot-*'),
  row('press', 'cavities apart', 'cavity-spread'),
  row('press', 'insert waits in the mould', 'insert-waits'),
  row('press', 'cure cut short, pressure low', 'cure-short pressure-low'),
  row('press', `lot on hold is used ${ours}`, 'insert-lot-held compound-held'),
  row(
    'preparation',
    'blast-to-coat and conversion-to-coat clocks',
    'blast-to-coat conversion-to-coat',
  ),
  row(
    'preparation',
    'water-break and rust bloom',
    'water-break rust-bloom media-oily blast-profile blast-pressure phosphate-weight shift-check-late dew-margin',
  ),
  row('preparation', 'rinse and make-up water', 'rinse-conductivity make-up-water bath-points'),
];
