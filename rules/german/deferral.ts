/** German for the sentences under every label (rules/alarm/label.ts). */
export const deferralInGerman =
  'Nur ein Rat; dies ist kein Sicherheitssystem. Das Sicherheitsdatenblatt, die Anleitungen der Hersteller der ' +
  'Anlagen, der Plan Ihres Werks und die örtlichen Vorschriften gehen vor. Arbeiten an Brennern, Elektrik, Druck ' +
  'und Löscheinrichtungen sind Sache zugelassener Fachleute.';
