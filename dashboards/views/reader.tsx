/** The reader's own: language, units, light or dark, sound, when shifts change. */
import { useState } from 'preact/hooks';
import { Choice } from '../parts/choice.tsx';
import { useBoard } from '../state/board.ts';
import { choose, type Preferences, speakChosen, usePreferences } from '../state/preferences.ts';
import { ring } from '../state/sound.ts';
import { say } from '../text/say.ts';

const temperatures = [
  ['Cel', '°C'],
  ['[degF]', '°F'],
] as const;
const pressures = [
  ['bar', 'bar'],
  ['kPa', 'kPa'],
  ['[psi]', 'psi'],
] as const;
const speeds = [
  ['m', 'm/s, m/min'],
  ['[ft_i]/min', 'ft/min'],
] as const;
const smallLengths = [
  ['um', 'µm'],
  ['[mil_i]', 'mil'],
] as const;

export function Reader() {
  const chosen = usePreferences();
  const site = useBoard((board) => board.site);
  const grounds = Object.entries(say('groundChoice'));
  return (
    <article>
      <h1>{say('reader')}</h1>
      <p>{say('readerSays')}</p>
      <div class="form">
        <Languages language={chosen.language} />
        <Choice
          legend={say('temperature')}
          name="temperature"
          value={chosen.temperature}
          choices={temperatures}
          choose={(temperature) =>
            choose({ temperature: temperature as Preferences['temperature'] })
          }
        />
        <Choice
          legend={say('pressure')}
          name="pressure"
          value={chosen.pressure}
          choices={pressures}
          choose={(pressure) => choose({ pressure: pressure as Preferences['pressure'] })}
        />
        <Choice
          legend={say('smallLength')}
          name="small-length"
          value={chosen.smallLength}
          choices={smallLengths}
          choose={(length) => choose({ smallLength: length as Preferences['smallLength'] })}
        />
        <Choice
          legend={say('speed')}
          name="speed"
          value={chosen.speed}
          choices={speeds}
          choose={(speed) => choose({ speed: speed as Preferences['speed'] })}
        />
        <Choice
          legend={say('ground')}
          name="ground"
          value={chosen.ground}
          choices={grounds}
          choose={(ground) => choose({ ground: ground as Preferences['ground'] })}
        />
        <Sound sound={chosen.sound} />
        <Shifts shiftsMin={chosen.shiftsMin ?? site?.shifts_min ?? []} />
      </div>
    </article>
  );
}

function Languages({ language }: Pick<Preferences, 'language'>) {
  const [failed, setFailed] = useState(false);
  const take = async (next: string): Promise<void> => {
    choose({ language: next as Preferences['language'] });
    setFailed(!(await speakChosen()));
  };
  return (
    <div>
      <Choice
        legend={say('language')}
        name="language"
        value={language}
        choices={Object.entries(say('languageChoice'))}
        choose={(next) => void take(next)}
      />
      <p class="hint">{say('languageSays')}</p>
      {failed ? <strong role="alert">{say('languageFailed')}</strong> : null}
    </div>
  );
}

/** Choosing it sounds it: so it is known how it sounds, and that the phone lets it. */
function Sound({ sound }: Pick<Preferences, 'sound'>) {
  const take = (next: string): void => {
    choose({ sound: next as Preferences['sound'] });
    if (next === 'on') ring();
  };
  return (
    <div>
      <Choice
        legend={say('sound')}
        name="sound"
        value={sound}
        choices={Object.entries(say('soundChoice'))}
        choose={take}
      />
      <p class="hint">{say('soundSays')}</p>
    </div>
  );
}

const clockOf = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** `06:00 14:00` as ascending minutes; null where it is none. */
export function shiftsOf(text: string): number[] | null {
  const minutes = text
    .split(/[\s,;]+/)
    .filter((each) => each !== '')
    .map((each) => {
      const [, hour, minute] = /^(\d{1,2}):(\d{2})$/.exec(each) ?? [];
      const at = Number(hour) * 60 + Number(minute);
      return hour !== undefined && Number(hour) < 24 && Number(minute) < 60 ? at : Number.NaN;
    });
  if (minutes.length === 0 || minutes.some(Number.isNaN)) return null;
  return [...new Set(minutes)].sort((a, b) => a - b);
}

function Shifts({ shiftsMin }: { readonly shiftsMin: readonly number[] }) {
  const [text, setText] = useState(shiftsMin.map(clockOf).join(' '));
  const [wrong, setWrong] = useState(false);
  const take = (): void => {
    const found = shiftsOf(text);
    setWrong(found === null);
    if (found !== null) choose({ shiftsMin: found });
  };
  return (
    <label class="field">
      {say('shiftEnds')}
      <span class="hint">{say('shiftHint')}</span>
      <input
        value={text}
        aria-invalid={wrong}
        onInput={(event) => setText(event.currentTarget.value)}
        onChange={take}
      />
      {wrong ? <strong role="alert">{say('shiftWrong')}</strong> : null}
    </label>
  );
}
