/**
 * A message as an e-mail: plain text and HTML that say the same.
 *
 * Always true: what came from sensors, people or the site file is text and nothing else, in the
 * HTML as in the headers; nothing is loaded from anywhere.
 */
import type { SignalWord } from '#rules/alarm/label.ts';
import { limits } from '../../limits.ts';
import type { Message } from '../contract.ts';
import { mailWords } from './mail-words.ts';

export interface MailPlace {
  /** The address of the agent's page, without a stroke at its end. */
  readonly page: string;
  /** IANA zone of the site. */
  readonly timezone: string;
}

interface Section {
  readonly heading: string;
  readonly kind: 'text' | 'list' | 'numbered';
  readonly lines: readonly string[];
}

/** Without control characters and the marks that turn the direction of writing; of bounded length. */
export const clean = (text: string): string =>
  text
    .toWellFormed()
    .replaceAll(/[\p{Cc}\u2028\u2029]+/gu, ' ')
    .replaceAll(/[\u202a-\u202e\u2066-\u2069]/gu, '')
    .slice(0, limits.channelTextCharsMax)
    .toWellFormed();

export const subjectOf = (message: Message): string => clean(message.title).trim();

/** Do-nots before the steps: the step that people take unasked is the one that injures. */
function sectionsOf(message: Message, { timezone }: MailPlace): Section[] {
  const words = mailWords[message.language];
  const all: Section[] = [
    { heading: words.limit, kind: 'text', lines: [message.limitText] },
    {
      heading: words.doNot,
      kind: 'list',
      lines: message.doNot,
    },
    { heading: words.caution, kind: 'text', lines: [message.caution] },
    { heading: words.firstSteps, kind: 'numbered', lines: message.steps },
    { heading: words.consequence, kind: 'text', lines: [message.consequence] },
    ...(message.details ?? []).map(({ heading, lines }) => ({
      ...{ heading: clean(heading), kind: 'list' as const, lines },
    })),
    { heading: words.since, kind: 'text', lines: [clockOf(message, timezone)] },
  ];
  return all
    .map((section) => ({
      ...section,
      lines: section.lines.map(clean).filter((line) => line !== ''),
    }))
    .filter(({ lines }) => lines.length > 0);
}

/** By the clock of the site, with the name of its zone. */
const clockOf = ({ at, language }: Message, timezone: string): string =>
  new Intl.DateTimeFormat(language === 'de' ? 'de-DE' : 'en-GB', {
    timeZone: timezone,
    year: 'numeric',
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZoneName: 'short',
  }).format(at);

interface Link {
  readonly words: string;
  readonly url: string;
}

const linkOf = (message: Message, { page }: MailPlace): Link => {
  const { look, open, openFirst } = mailWords[message.language];
  const { kind, highlyManaged } = message;
  const isReport = kind === 'week' || kind === 'checkpoint' || kind === 'digest';
  const words = isReport ? look : highlyManaged ? openFirst : open;
  return { words, url: `${page}${message.url}` };
};

export function plainText(message: Message, place: MailPlace): string {
  const { words, url } = linkOf(message, place);
  const marks = { text: () => '', list: () => '- ', numbered: (i: number) => `${i + 1}. ` };
  const sections = sectionsOf(message, place).map(({ heading, kind, lines }) =>
    [heading, ...lines.map((line, i) => `${marks[kind](i)}${line}`)].join('\n'),
  );
  const foot = [mailWords[message.language].noAnswer, clean(message.deferral), message.site];
  return [
    subjectOf(message),
    clean(message.sentence),
    ...sections,
    `${words}:\n${url}`,
    '-- ',
    ...foot,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
export const escapeHtml = (text: string): string =>
  text.replaceAll(/[&<>"']/g, (mark) => escapes[mark] ?? mark);

/** ANSI Z535.4, as the page has them. */
const panels: Readonly<Record<SignalWord, string>> = {
  DANGER: 'background:#C8102E;color:#FFFFFF',
  WARNING: 'background:#FF8200;color:#000000',
  CAUTION: 'background:#FFD100;color:#000000',
  NOTICE: 'background:#0072CE;color:#FFFFFF',
};
const calm = 'background:#FFFFFF;color:#1D1C1A';

export function htmlText(message: Message, place: MailPlace): string {
  const { words, url } = linkOf(message, place);
  const title = escapeHtml(subjectOf(message));
  const panel = message.silent ? calm : panels[message.word];
  const sections = sectionsOf(message, place).map(({ heading, kind, lines }) => {
    const items = lines.map(escapeHtml);
    const list = kind === 'list' ? 'ul' : 'ol';
    const body =
      kind === 'text'
        ? items.map((line) => `<p style="margin:4px 0">${line}</p>`).join('')
        : `<${list}>${items.map((line) => `<li>${line}</li>`).join('')}</${list}>`;
    return `<h2 style="font-size:16px;margin:16px 0 4px">${escapeHtml(heading)}</h2>${body}`;
  });
  const foot = [mailWords[message.language].noAnswer, clean(message.deferral), message.site];
  return `<!doctype html>
<html lang="${message.language}"><head><meta charset="utf-8"><title>${title}</title></head>
<body style="font-family:sans-serif;font-size:16px;line-height:1.4;${calm};max-width:40em">
<h1 style="font-size:20px;margin:0;padding:8px 12px;border:2px solid #1D1C1A;${panel}">${title}</h1>
<p style="font-size:20px">${escapeHtml(clean(message.sentence))}</p>
${sections.join('\n')}
<p style="margin:24px 0"><a href="${escapeHtml(url)}" style="color:#1D1C1A">${escapeHtml(words)}</a></p>
<hr>
${foot.map((line) => `<p style="font-size:14px;color:#5A5853">${escapeHtml(line)}</p>`).join('\n')}
</body></html>
`;
}
