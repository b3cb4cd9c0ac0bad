/**
 * A short tone for a new alarm of high priority, where the reader wants one. Off unless chosen.
 *
 * Always true: nothing but an alarm that was raised, or raised again, and that nobody has answered
 * sounds; a return to normal never does.
 */
import type { StreamEvent } from '../../agent/web/contract.ts';
import { isAnswered } from '../judge/bands.ts';
import { readPreferences } from './preferences.ts';

type AlarmEvent = Extract<StreamEvent, { event: 'alarm' }>['data'];

export const isHeard = ({ change, alarm }: AlarmEvent): boolean =>
  (change === 'raised' || change === 'realarmed') &&
  alarm.priority === 'high' &&
  !isAnswered(alarm);

const pitchHz = 880;
const lengthS = 0.25;
const loudness = 0.2;

let audio: AudioContext | null = null;

/** Two beats; nothing where the browser keeps the page silent until somebody has touched it. */
export function ring(): void {
  audio ??= new AudioContext();
  if (audio.state === 'suspended') void audio.resume();
  for (const afterS of [0, 0.4]) {
    const begin = audio.currentTime + afterS;
    const tone = audio.createOscillator();
    const gain = audio.createGain();
    tone.frequency.value = pitchHz;
    // Swells and fades, so that it does not click.
    gain.gain.setValueAtTime(0, begin);
    gain.gain.linearRampToValueAtTime(loudness, begin + 0.02);
    gain.gain.linearRampToValueAtTime(0, begin + lengthS);
    tone.connect(gain).connect(audio.destination);
    tone.start(begin);
    tone.stop(begin + lengthS);
  }
}

export function soundAlarm(event: AlarmEvent): void {
  if (readPreferences().sound === 'on' && isHeard(event)) ring();
}

/** Browsers let a page sound only after a touch: the first one readies it. */
export function readySound(): void {
  const ready = (): void => {
    if (readPreferences().sound !== 'on') return;
    audio ??= new AudioContext();
    void audio.resume();
    document.removeEventListener('pointerdown', ready);
  };
  document.addEventListener('pointerdown', ready);
}
