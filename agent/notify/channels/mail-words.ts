/** Headings of an e-mail, in the languages of people. Its sentences come with the message. */
export interface MailWords {
  readonly limit: string;
  readonly doNot: string;
  readonly firstSteps: string;
  readonly consequence: string;
  readonly caution: string;
  readonly since: string;
  readonly open: string;
  /** Of what asks for no answer. */
  readonly look: string;
  /** A highly managed alarm is looked at before it is acknowledged. */
  readonly openFirst: string;
  readonly noAnswer: string;
}

export const mailWords: Readonly<Record<'en' | 'de', MailWords>> = {
  en: {
    limit: 'Limit',
    doNot: 'What not to do',
    firstSteps: 'First steps',
    consequence: 'What it leads to',
    caution: 'Caution',
    since: 'Time of the event',
    open: 'See it and acknowledge it on the page',
    look: 'See more on the page',
    openFirst: 'See it on the page; it is acknowledged there alone',
    noAnswer: 'This address takes no answers. An answer by e-mail acknowledges nothing.',
  },
  de: {
    limit: 'Grenze',
    doNot: 'Was nicht zu tun ist',
    firstSteps: 'Erste Schritte',
    consequence: 'Was daraus wird',
    caution: 'Achtung',
    since: 'Zeitpunkt',
    open: 'Auf der Seite ansehen und quittieren',
    look: 'Mehr auf der Seite',
    openFirst: 'Auf der Seite ansehen; nur dort wird quittiert',
    noAnswer: 'Diese Adresse nimmt keine Antworten an. Eine Antwort per E-Mail quittiert nichts.',
  },
};
