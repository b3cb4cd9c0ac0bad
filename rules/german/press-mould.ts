/** German for the texts of `rules/stations/press-mould.ts`. */
import type { Texts } from './texts.ts';

export const pressMould: Texts = {
  'Hot mould; keep hands and tools out of a press that can close. Lock out by local rules.':
    'Heiße Form; Hände und Werkzeug aus einer Presse heraushalten, die schließen kann. Nach den örtlichen Vorschriften gegen Wiedereinschalten sichern.',
  // mould-cold
  'Adhesive and rubber do not cure together, and the bond lets go.':
    'Haftmittel und Gummi vernetzen nicht miteinander, und die Bindung löst sich.',
  'Do not load; a shot already in gets the tag “hold”.':
    'Nicht beladen; einen Schuss, der schon in der Form ist, mit „gesperrt“ kennzeichnen.',
  'With the press made safe by its own instruction, measure the cavity with a contact probe.':
    'Presse nach ihrer Betriebsanweisung sichern, dann die Kavität mit einem Kontaktfühler messen.',
  'Let the mould soak until it has its temperature; tell the shift lead if it does not come.':
    'Form durchwärmen lassen, bis sie ihre Temperatur hat; wird sie nicht erreicht, die Schichtleitung informieren.',
  'lengthen the cure by feel': 'Die Vulkanisationszeit nicht nach Gefühl verlängern.',
  // mould-hot
  '{$signal} at {$value}, {$difference} above its set temperature of {$reference}, for {$duration}.':
    '{$signal}: {$value}, {$difference} über der Solltemperatur {$reference}, seit {$duration}.',
  'The adhesive cures on the insert before the rubber comes, and the compound scorches.':
    'Das Haftmittel vernetzt auf dem Einlegeteil, bevor der Kautschuk kommt, und die Kautschukmischung vulkanisiert an.',
  'Compare with the control’s own display; with the press made safe by its own instruction, measure the cavity with a contact probe.':
    'Mit der Anzeige der Steuerung vergleichen; Presse nach ihrer Betriebsanweisung sichern, dann die Kavität mit einem Kontaktfühler messen.',
  'Tag the shots since it rose “hold” and tell the process engineer.':
    'Die Schüsse seit dem Anstieg mit „gesperrt“ kennzeichnen und dem Prozessingenieur melden.',
  'shorten the cure by feel': 'Die Vulkanisationszeit nicht nach Gefühl verkürzen.',
  // cavity-spread
  '{$which} is {$difference} hotter than {$other}, more than {$allowed} between cavities of one mould.':
    '{$which}: {$difference} heißer als {$other}, mehr als {$allowed} zwischen Kavitäten einer Form.',
  'Parts of one cavity are bad while the others hold, shot after shot.':
    'Die Teile einer Kavität sind schlecht, während die der anderen halten, Schuss um Schuss.',
  'With the press made safe by its own instruction, map the cavities with a contact probe.':
    'Presse nach ihrer Betriebsanweisung sichern, dann alle Kavitäten mit einem Kontaktfühler ausmessen.',
  'Have the heaters of the odd cavity seen to.':
    'Die Heizelemente der abweichenden Kavität in Ordnung bringen lassen.',
  'Flag the cavity, so that its parts can be told apart.':
    'Die Kavität kennzeichnen, damit ihre Teile zu unterscheiden sind.',
  'average the platens': 'Nicht den Mittelwert der Heizplatten nehmen.',
};
