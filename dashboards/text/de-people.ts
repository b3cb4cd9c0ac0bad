/** Anmelden, Einladungen und Personen; part of the German catalogue. */
export const people = {
  product: 'Forebond',
  signIn: 'Anmelden',
  signInWhat:
    'Diese Seite zeigt Alarme nur Personen, die eine Administratorin oder ein Administrator eingeladen hat.',
  signInOver: 'Sie wurden abgemeldet, oder die Seite wurde einige Stunden nicht benutzt.',
  personName: 'Name',
  password: 'Passwort',
  showPassword: 'Zeigen, was ich tippe',
  signInForgotten:
    'Passwort vergessen: Lassen Sie sich von der Administration einen neuen Link geben.',
  signedInAs: 'Sie sind {$name}, {$role}.',
  noPeople:
    'Hier meldet sich noch niemand an: Wer an diesem Rechner sitzt, darf alles. Laden Sie zuerst jemanden für die Administration ein; von da an melden sich alle an.',
  me: 'Sie',
  peopleHere: 'Personen',
  peopleWho:
    'Personen und Zugangsschlüssel sieht nur, wer die Administration hat. Ihre Rolle: {$role}.',
  signOut: 'Hier abmelden',
  signOutAll: 'Überall abmelden',
  signOutAllWhat: 'Auf jedem Telefon und Rechner, an dem Sie angemeldet sind, auch hier.',
  passwordChange: 'Ein anderes Passwort wählen',
  passwordCurrent: 'Bisheriges Passwort',
  passwordNew: 'Neues Passwort',
  passwordHint:
    '{$n} Zeichen oder mehr. Einige eigene Wörter hintereinander merken sich leicht; ohne Grund müssen Sie es nie ändern.',
  passwordChangeWhat: 'Hier bleiben Sie angemeldet; überall sonst werden Sie abgemeldet.',
  again: 'Ihr Passwort noch einmal',
  againWhat: 'Diese Änderung braucht es; dann gilt es fünf Minuten.',
  againSend: 'Weiter',

  invitation: 'Einladung',
  invitationFor: '{$name}, Sie sind zu {$site} eingeladen: {$role}.',
  invitationFirst: 'Sie übernehmen als Erste oder Erster die Administration von {$site}.',
  invitationSays: 'Wählen Sie ein Passwort. Dann sind Sie auf diesem Gerät angemeldet.',
  invitationName: 'Ihr Name, wie man Sie nennt',
  invitationAccept: 'Beginnen',
  invitationNone: 'Dieser Link geht nicht.',
  invitationReading: 'Die Einladung wird nachgesehen.',
  authority: 'Falls der Browser gewarnt hat',
  authoritySays:
    'Diese Seite hat ein eigenes Zertifikat, das Ihr Gerät noch nicht kennt. Lassen Sie sich den Fingerabdruck von der Administration persönlich oder am Telefon vorlesen, vergleichen Sie ihn, und vertrauen Sie dem Zertifikat erst dann in den Einstellungen Ihres Geräts.',
  authorityFingerprint: 'Fingerabdruck (SHA-256)',
  authorityFetch: 'Zertifikat holen',
  authorityHow:
    'Am iPhone: Datei öffnen, Profil in den Einstellungen installieren, dann unter Zertifikatsvertrauen einschalten. Unter Android: Einstellungen, Sicherheit, Zertifikat installieren, CA-Zertifikat. Am Rechner: zu den Stellen hinzufügen, denen der Browser vertraut.',

  invite: 'Jemanden einladen',
  inviteSend: 'Link machen',
  invited: 'Link für {$name}',
  invitedSays:
    'Zeigen Sie diesen Code {$name}, oder senden Sie den Link sonst niemandem. Er lässt eine Person einmal ein, bis {$clock}. Er wird nicht noch einmal gezeigt.',
  invitedLinkSays:
    'Der Link lässt {$name} einmal ein, bis {$clock}. Er wird nicht noch einmal gezeigt.',
  invitedOnlyHere:
    'Diese Seite steht nur auf diesem Gerät offen, daher erreicht kein Telefon den Link und es gibt keinen Code zum Scannen. {$name} kann ihn hier öffnen. Für Telefone den Agenten mit --http 0.0.0.0:8620 --people --name NAME starten: Dann spricht er TLS im Werksnetz. Danach einen neuen Link machen.',
  invitedQr: 'QR-Code des Links für {$name}',
  invitedCopy: 'Der Link',
  roleLegend: 'Rolle',
  role: {
    reader: 'Lesen',
    operator: 'Bedienung',
    maintenance: 'Instandhaltung',
    ehs: 'Arbeitssicherheit',
    engineer: 'Technik',
    administrator: 'Administration',
  },
  roleWhat: {
    reader: 'Sieht zu.',
    operator: 'Quittiert Alarme, schreibt auf, sperrt.',
    maintenance: 'Wie Bedienung, und nimmt Alarme außer Betrieb.',
    ehs: 'Wie Bedienung, und hebt Sperren auf. Umwelt, Gesundheit und Sicherheit.',
    engineer: 'Wie Bedienung, und hebt Sperren auf und lädt die Anlagendatei.',
    administrator: 'Alles, auch Personen und Zugangsschlüssel.',
  },
  personJoined: '.match $n one {{an einer Stelle angemeldet}} * {{an {$n} Stellen angemeldet}}',
  personInvited: 'eingeladen, Link gilt bis {$clock}',
  personWaiting: 'braucht einen neuen Link',
  personNone: 'Hier ist noch niemand.',
  personChange: 'Ändern',
  roleChange: 'Diese Rolle geben',
  personReset: 'Neuen Link machen',
  personResetWhat: 'Das Passwort gilt nicht mehr, und {$name} wird überall abgemeldet.',
  personRemove: '{$name} entfernen',
  personRemoveWhat:
    '{$name} wird überall abgemeldet, und der Name wird vergessen. Das Journal behält das Getane unter einer Nummer.',
  tokens: 'Zugangsschlüssel für Programme',
  tokensSays:
    'Ein Programm sendet seinen Schlüssel mit jeder Anfrage. Er hat eine Rolle und ein Ende.',
  tokenNone: 'Kein Programm hat einen Schlüssel.',
  tokenAdd: 'Schlüssel hinzufügen',
  tokenLabel: 'Wofür er ist',
  tokenDays: 'Gilt so viele Tage',
  tokenSecret: 'Kopieren Sie ihn jetzt; er wird nicht noch einmal gezeigt.',
  tokenUntil: '{$role}, bis {$clock}',
  tokenRemove: 'Beenden',
} as const;
