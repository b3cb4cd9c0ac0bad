/**
 * Every sentence of the page in German, in the shape of `en.ts`; fetched only where it is read.
 *
 * Sie-form, short, calm. Words of the trade: quittieren for acknowledge, Haftmittel for adhesive,
 * Trockenofen, Tauchbecken, Taupunkt. What the rules say stands in rules/german/.
 */

import { deferralInGerman } from '#rules/german/deferral.ts';
import { aside } from './de-aside.ts';
import { people } from './de-people.ts';
import { phone } from './de-phone.ts';
import { readings } from './de-readings.ts';
import { rules } from './de-rules.ts';
import { sensors } from './de-sensors.ts';
import { watch } from './de-watch.ts';
import { written } from './de-written.ts';
import { translated } from './translation.ts';

export { phrases } from './de-phrases.ts';

export const de = translated({
  ...phone,
  ...people,
  ...aside,
  ...readings,
  ...rules,
  ...sensors,
  ...watch,
  ...written,
  // places
  attention: 'Achtung',
  line: 'Linie',
  due: 'Fällig',
  lookBack: 'Rückblick',
  coverage: 'Was überwacht wird',
  holds: 'Sperren',
  runs: 'Ofenfahrten',
  reader: 'Sprache, Einheiten, Licht und Schichten',
  back: 'Zurück',
  places: 'Orte',
  skip: 'Zum Inhalt springen',

  // the link
  heard: 'gehört {$clock}',
  waiting: 'Warten auf den Agenten.',
  waitingLong:
    'Der Agent antwortet nicht. Die Seite versucht es von selbst wieder; sehen Sie nach, ob das Gerät Strom hat und das Netz da ist.',
  staleLine: 'Zuletzt gesehen {$clock}, vor {$age}; keine Verbindung.',
  staleWhat:
    'Was hier steht, kann sich seither geändert haben. Die Seite versucht es von selbst wieder.',
  zone: 'Zeiten sind {$zone}.',
  boxIll: 'Dieses Gerät braucht Pflege: {$part}. {$note}',
  boxRecordLost:
    'Ein Teil der Aufzeichnung ist verloren. Jede Stelle ansehen, deren Alarm anstand, und die Sperren prüfen.',
  boxSiteAsBefore:
    'Die Werksdatei hat einen Fehler; überwacht wird weiter, was zuletzt angenommen wurde. Antippen: was zu beheben ist.',
  boxSaysMore: 'Antippen: was fehlt und was zu tun ist.',
  boxPart: {
    engine: 'Bewertung',
    disk: 'Speicher',
    record: 'Aufzeichnung',
    clock: 'Uhr',
    mqtt: 'Eingang der Sensoren',
    site: 'Werksdatei',
    rules: 'Regeln',
    sensors: 'Sensoren',
    telling: 'Benachrichtigung',
  },
  noSuchPlace: 'Diesen Ort gibt es nicht. Vielleicht ist der Link alt.',

  // counts
  watched: '.match $n one {{{$n} Gefahr überwacht}} * {{{$n} Gefahren überwacht}}',
  notWatched: '{$n} nicht überwacht',
  partlyWatched: '{$n} nicht durch alle ihre Regeln',
  noReading: '{$n} ohne verwendbaren Messwert',
  hazardCounts:
    'Gefahren überwacht: {$watched}; nicht überwacht: {$notWatched}; ohne verwendbaren Messwert: {$unjudged}; letzter Blick {$clock}.',
  hazardCountsShort:
    'Gefahren überwacht: {$watched}; nicht überwacht: {$notWatched}; ohne verwendbaren Messwert: {$unjudged}.',
  nothingWatched: 'Keine Gefahr dieser Station wird überwacht.',

  // bands
  people: 'Menschen können verletzt werden',
  shift: 'Vor dem Schichtende, {$clock}',
  wait: 'Das kann warten',
  overNotices: 'Schon vorbei, noch nicht geschlossen: {$n}',
  aside: 'Zur Seite gelegt',
  orderChanged: 'Reihenfolge geändert. Zeigen',

  // an alarm
  word: { DANGER: 'GEFAHR', WARNING: 'WARNUNG', CAUTION: 'VORSICHT', NOTICE: 'HINWEIS' },
  priority: { high: 'Priorität hoch', medium: 'Priorität mittel', low: 'Priorität niedrig' },
  notAnswered: 'nicht beantwortet',
  answeredBy: 'beantwortet {$clock}, {$by}',
  answeredHere: 'beantwortet {$clock}, an diesem Gerät',
  reachedIn: 'Grenzwert {$limit} erreicht in {$range}, wenn es so weitergeht.',
  since: 'Seit {$clock}.',
  nowReads: 'Jetzt {$value}.',
  nowApart: 'Jetzt {$value} auseinander.',
  overLatched:
    'Vorbei seit {$clock}. Er bleibt stehen, bis jemand ihn zurücksetzt; eine Zahl, die zurückging, ist keine Entwarnung.',
  closed: 'Vorbei seit {$clock}.',
  also: 'Auch an diesem Messwert',
  raisedAgain:
    'Er wurde seither erneut ausgelöst. Gehen Sie zum neueren; Ihre Antwort dort gilt für beide.',
  alsoEach: '{$rule}, Grenzwert {$limit}',
  cannotTell: 'Ob das vorbei ist, lässt sich nicht sagen.',
  shelvedUntil: 'Zurückgestellt bis {$clock}.',
  suppressed: 'Zurzeit nicht gemeldet, wegen des Zustands der Linie.',
  outOfService: 'Außer Betrieb genommen.',
  doNot: 'Nicht tun',
  firstSteps: 'Erste Schritte',
  consequence: 'Wozu es führt',
  evidence: 'Die letzte Stunde',
  told: 'Was geschah und wer antwortete',
  caution: 'Vorsicht',
  why: 'Warum es diese Regel gibt',
  whyKind: 'Sie achtet darauf: {$summary}',
  respond: 'Zeit zum Handeln: {$span}.',
  deferral: deferralInGerman,
  unknownFact: 'unbekannt',
  unknownAlarm: 'Dieser Alarm steht nicht mehr an und ist nicht unter den zuletzt beendeten.',

  // answers to an alarm
  answer: 'Ihre Antwort',
  acknowledge: 'Quittieren',
  keptNoAnswer:
    'Keine Verbindung: Von hier lässt sich nichts quittieren. Handeln Sie nach den Schritten; sagen Sie selbst der nächsten Person Bescheid.',
  stopsNothing: 'Ich kümmere mich. Das hält nichts an.',
  sending: 'Wird gesendet …',
  notSent: 'Nicht gesendet.',
  notSentWhat:
    'Vom Agenten kam keine Antwort, also weiß niemand, dass Sie sich kümmern. Handeln Sie nach den Schritten; sagen Sie selbst der nächsten Person Bescheid; versuchen Sie es wieder.',
  notSentOther:
    'Vom Agenten kam keine Antwort, also ist nichts sicher geändert. Versuchen Sie es wieder.',
  more: 'Mehr: weitergeben, zurückstellen, zurücksetzen',
  shelve: 'Zurückstellen',
  shelveWhat: 'Für eine Weile stumm. Die Gefahr bleibt.',
  unshelve: 'Zurückstellung beenden',
  reset: 'Zurücksetzen',
  resetWhat: 'Schließen, nachdem jemand nachgesehen hat und es vorbei ist.',
  resetManaged:
    'EHS oder eine Administratorin setzt ihn zurück, mit einem Grund von mindestens zehn Buchstaben: wer nachgesehen hat und was war. Wo sich niemand anmeldet, kann es jeder an dieser Maschine: Schreiben Sie Ihren Namen zum Grund.',
  resetNotYet: 'Zurücksetzen lässt er sich, wenn er vorbei und beantwortet ist.',
  noShelf:
    'Dieser Alarm darf nicht zurückgestellt werden: Es geht um Menschen, und er ist besonders geführt: mit besonderer Sorgfalt behandelt.',
  minutes: 'Für wie lange',
  reason: 'Warum',
  reasonHint: 'In wenigen Worten; es bleibt aufgezeichnet.',
  refused: '{$why} {$fix}',
  done: 'Erledigt und aufgezeichnet.',
  thisNeeded: 'War das nötig?',
  noted: 'Vermerkt.',

  transition: {
    raised: 'Ausgelöst',
    returned: 'Wieder normal',
    acknowledged: 'Quittiert',
    reset: 'Zurückgesetzt',
    realarmed: 'Erneut ausgelöst',
    shelved: 'Zurückgestellt',
    unshelved: 'Zurückstellung beendet',
    suppressed: 'Vorgesehen unterdrückt',
    released: 'Wieder freigegeben',
    'removed-from-service': 'Außer Betrieb genommen',
    'returned-to-service': 'Wieder in Betrieb',
    'passed-on': 'Weitergegeben',
    removed: 'Regel aus dem Werk entfernt',
  },
  thisMachine: 'an diesem Gerät',

  // due
  dueNothing:
    'Keine Sperre, kein Zurücksetzen und keine fehlende Zahl wartet hier auf einen Menschen.',
  dueHolds: 'Gesperrt, wartet auf eine Entscheidung',
  dueReset: 'Vorbei, wartet auf das Zurücksetzen',
  dueShelves: 'Zurückgestellt, und wieder da um',

  // look back
  backDays: 'Alarme der letzten sieben Tage',
  backNone: 'In den letzten sieben Tagen wurde kein Alarm ausgelöst.',
  backMore: 'Es gibt mehr, als hier gezeigt werden.',
  raisedAt: 'ausgelöst {$clock}',
  overAt: 'vorbei {$clock}',
  stillOpen: 'offen',
  whereElse: 'Auch hier',

  // holds
  holdsNone: 'Nichts ist gesperrt.',
  holdsLifted: 'Aufgehoben',
  holdOthers: 'Sperren darauf: {$count}. Gesperrt bleibt es, bis die letzte aufgehoben ist.',
  holdStill: 'Noch von anderen gesperrt: {$count}.',
  setHold: 'Sperren',
  holdWhat: { container: 'Gebinde', rack: 'Gestell', lot: 'Los', shot: 'Schuss' },
  holdWhatLegend: 'Was',
  holdItem: 'Name oder Nummer',
  lift: 'Sperre aufheben',
  liftWhat: 'Nur die Qualitätsstelle hebt eine Sperre auf. Sagen Sie, was daraus wird.',
  disposition: {
    released: 'Freigegeben',
    'released-after-test': 'Nach Prüfung freigegeben',
    reworked: 'Nachgearbeitet',
    scrapped: 'Verschrottet',
    returned: 'Zurückgegeben',
  },
  dispositionLegend: 'Was daraus wird',
  heldSince: 'gesperrt seit {$clock}, {$by}',
  heldByRule: 'durch die Regel {$rule}',
  liftedAt: '{$disposition} {$clock}, {$by}: {$reason}',
  holdFor: '{$what} {$item}',
  holdAt: '{$what} an {$place}',
  openAlarm: 'Alarm öffnen',

  // coverage
  coverageSays:
    'Jede Gefahr, die an den Stationen dieses Werks auftreten kann, überwacht oder nicht.',
  hazardState: {
    watched: 'überwacht',
    'not-watched': 'nicht überwacht',
    unjudged: 'jetzt kein verwendbarer Messwert',
  },
  watchedBy: 'durch {$rules}',

  // the reader
  language: 'Sprache',
  languageChoice: { system: 'Wie der Browser', en: 'English', de: 'Deutsch' },
  languageSays:
    'Alarmsätze, Schritte und Warnungen der Regeln sind auf Englisch verfasst und bleiben englisch. Sie werden nicht maschinell übersetzt.',
  languageFailed:
    'Diese Sprache ließ sich nicht laden. Die Seite bleibt, wie sie ist; wählen Sie wieder, wenn die Verbindung da ist.',
  sound: 'Ton',
  soundChoice: { off: 'Aus', on: 'An' },
  soundSays:
    'Ein kurzer Ton bei einem neuen, unbeantworteten Alarm hoher Priorität, solange diese Seite offen ist. Verlassen Sie sich nicht darauf: Manche Telefone halten eine Seite an, die niemand ansieht.',
  temperature: 'Temperatur',
  pressure: 'Druck',
  smallLength: 'Schichtdicke',
  speed: 'Geschwindigkeit',
  ground: 'Hell oder dunkel',
  groundChoice: { system: 'Wie das Telefon', light: 'Hell', dark: 'Dunkel' },
  readerSays:
    'Nur auf diesem Telefon gespeichert. Was abgelegt wird und worin ein Handwert eingetragen wird, bleibt in der Einheit des Messgeräts.',
  shiftEnds: 'Schichtwechsel um',
  shiftHint: 'Zeit des Werks, etwa 06:00 14:00 22:00.',
  shiftWrong: 'Schreiben Sie Zeiten als 06:00, mit Leerzeichen dazwischen.',

  // what it is not
  advice:
    'Nur ein Hinweisgeber; kein Sicherheitssystem, kein Brandmelder und keine Ofen- oder Brennersteuerung.',
});
