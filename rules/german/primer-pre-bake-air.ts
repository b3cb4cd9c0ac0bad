/** German for the texts of `rules/stations/primer-pre-bake-air.ts`. */
import type { Texts } from './texts.ts';

export const primerPreBakeAir: Texts = {
  '{$signal} at {$value}, {$difference} from its set-point of {$reference}, for {$duration}.':
    '{$signal}: {$value}, {$difference} Abweichung vom Sollwert {$reference}, seit {$duration}.',
  'Racks get another heat than was set up, some too little and some too much.':
    'Gestelle bekommen eine andere Wärme als eingestellt, manche zu wenig und manche zu viel.',
  'Check the zone’s fan and its heating element at the oven’s own panel.':
    'Ventilator und Heizelement der Zone am Bedienpult des Ofens prüfen.',
  'Compare the sensor with the zone’s second sensor or the control’s own display.':
    'Den Sensor mit dem zweiten Sensor der Zone oder der Anzeige der Steuerung vergleichen.',
  'Watch what the metal gets; tell the process engineer.':
    'Beobachten, welche Wärme das Metall bekommt; den Prozessingenieur informieren.',
  'shift the set-point to make up for it': 'Den Sollwert nicht verstellen, um das auszugleichen.',
  'Hot surfaces. Work on burners, elements and controls is for licensed people.':
    'Heiße Oberflächen. Arbeiten an Brennern, Heizelementen und Steuerungen nur durch zugelassene Fachleute.',
  // zones-apart
  '{$station}: zones {$difference} apart, more than {$allowed}; the hotter is {$which}.':
    '{$station}: Zonen {$difference} auseinander, mehr als {$allowed}; die heißere ist {$which}.',
  'Check fans and heating elements of both zones at the oven’s own panel.':
    'Ventilatoren und Heizelemente beider Zonen am Bedienpult des Ofens prüfen.',
  'Compare each sensor with its zone’s second sensor or the control’s own display.':
    'Jeden Sensor mit dem zweiten Sensor seiner Zone oder der Anzeige der Steuerung vergleichen.',
  'Where zones are set apart on purpose, the process engineer sets this limit to it.':
    'Wo Zonen mit Absicht verschieden eingestellt sind, passt der Prozessingenieur diesen Grenzwert daran an.',
};
