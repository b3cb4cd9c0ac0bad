/**
 * What the service worker says of itself. It stands apart from the page's catalogue, since the worker
 * loads nothing but its own file; an alarm's sentences come with the message.
 */
interface WorkerWords {
  readonly acknowledge: string;
  readonly look: string;
  readonly stopsNothing: string;
  readonly acknowledged: string;
  readonly notSent: string;
  readonly notSentSays: string;
  readonly refused: string;
  readonly signIn: string;
  readonly unreadable: string;
  readonly unreadableSays: string;
}

export const workerWords: Readonly<Record<'en' | 'de', WorkerWords>> = {
  en: {
    acknowledge: 'Acknowledge',
    look: 'See it',
    stopsNothing: 'You have it. This stops nothing.',
    acknowledged: 'Acknowledged',
    notSent: 'Not sent',
    notSentSays: 'The agent did not answer. Nobody knows that you have it: try again, or call.',
    refused: 'Not acknowledged',
    signIn: 'Nobody is signed in on this phone. Tap to sign in, then acknowledge on the page.',
    unreadable: 'A message came that cannot be read',
    unreadableSays: 'Look at the page to see what it was about.',
  },
  de: {
    acknowledge: 'Quittieren',
    look: 'Ansehen',
    stopsNothing: 'Sie haben es übernommen. Das hält nichts an.',
    acknowledged: 'Quittiert',
    notSent: 'Nicht gesendet',
    notSentSays:
      'Der Agent hat nicht geantwortet. Niemand weiß, dass Sie es haben: noch einmal versuchen oder anrufen.',
    refused: 'Nicht quittiert',
    signIn:
      'Auf diesem Telefon ist niemand angemeldet. Antippen, anmelden und auf der Seite quittieren.',
    unreadable: 'Eine Nachricht kam, die nicht zu lesen ist',
    unreadableSays: 'Sehen Sie auf der Seite nach, worum es ging.',
  },
};
