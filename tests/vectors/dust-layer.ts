import type { Sourced } from './sourced.ts';

const makers = 'tables of two makers of protected equipment, after IEC 60079-14 and EN 1127-1';
const institute = 'a maker’s manual, citing a research report of an institute for occupational safety';

export interface DustRow extends Sourced {
  readonly dust: string;
  readonly layer5MmC: number | null;
  readonly cloudC: number | null;
  readonly maxC: number;
  readonly decidedBy: 'layer' | 'cloud';
}
export const dustRows: readonly DustRow[] = [
  { dust: 'unvulcanised rubber', layer5MmC: 220, cloudC: 460, maxC: 145, decidedBy: 'layer', source: makers, flag: 'seen' },
  { dust: 'synthetic rubber with soot', layer5MmC: 220, cloudC: null, maxC: 145, decidedBy: 'layer', source: institute, flag: 'seen' },
  { dust: 'polyvinyl acetate', layer5MmC: 340, cloudC: 500, maxC: 265, decidedBy: 'layer', source: makers, flag: 'seen' },
  { dust: 'soot', layer5MmC: 385, cloudC: 620, maxC: 310, decidedBy: 'layer', source: makers, flag: 'seen' },
  { dust: 'cocoa', layer5MmC: 460, cloudC: 580, maxC: 385, decidedBy: 'layer', source: makers, flag: 'seen' },
  { dust: 'sulphur', layer5MmC: 280, cloudC: 280, maxC: 186, decidedBy: 'cloud', source: makers, flag: 'seen' },
  { dust: 'isosorbide dinitrate', layer5MmC: 240, cloudC: 220, maxC: 146, decidedBy: 'cloud', source: makers, flag: 'seen' },
  { dust: 'iron', layer5MmC: 300, cloudC: 310, maxC: 206, decidedBy: 'cloud', source: makers, flag: 'seen' },
  { dust: 'brown coal', layer5MmC: 225, cloudC: 380, maxC: 150, decidedBy: 'layer', source: makers, flag: 'seen' },
  { dust: 'stearic acid', layer5MmC: null, cloudC: 190, maxC: 126, decidedBy: 'cloud', source: makers, flag: 'seen' },
];
