/** Mein Telefon: push an, aus und ausprobiert; part of the German catalogue. */
export const phone = {
  myPhone: 'Mein Telefon',
  phoneSays:
    'Mit Push kommen Alarme auf dieses Telefon, auch wenn die Seite zu und das Telefon gesperrt ist.',
  phoneReading: 'Es wird nachgesehen, ob Push hier an ist.',
  phoneState: {
    on: 'Push ist auf diesem Telefon an.',
    off: 'Push ist auf diesem Telefon aus.',
    blocked:
      'Dieses Telefon lässt die Seite keine Mitteilungen senden. Erlauben Sie sie in den Einstellungen des Browsers und kommen Sie dann hierher zurück.',
    install:
      'Auf diesem Telefon geht Push, sobald die Seite auf dem Home-Bildschirm liegt: teilen, „Zum Home-Bildschirm“, dann von dort öffnen.',
    insecure:
      'Push braucht die Seite über https oder auf dem Gerät selbst. Fragen Sie, wer den Agenten betreibt, nach der https-Adresse.',
    unsupported:
      'Dieser Browser nimmt kein Push an. Nehmen Sie einen anderen oder lassen Sie sich per E-Mail rufen.',
    worker:
      'Der Teil, der Nachrichten empfängt, ist in diesem Browser nicht angelaufen. Laden Sie die Seite neu; hilft das nicht, wird ihr Zertifikat auf diesem Telefon vielleicht nicht anerkannt.',
  },
  phoneUnread:
    'Der Agent hat nicht geantwortet, über Push ist nichts bekannt. Versuchen Sie es wieder, wenn die Verbindung da ist.',
  whoIsTold: 'Wer gerufen würde',
  whoIsToldSays:
    'Bei einem Alarm hoher Priorität, Stand {$clock}. Wer nicht rechtzeitig antwortet, auf den wird nicht gewartet: die nächste Person wird gerufen.',
  whoIsToldNobody: 'Niemand würde gerufen.',
  whoIsToldNoWay: 'auf keinem Weg zu erreichen',
  whoAlso: 'Auch Programme werden gerufen: {$names}.',
  phoneOn: 'Push an',
  phoneOff: 'Push aus',
  phoneTest: 'Mir eine Probenachricht senden',
  phoneTestWhat:
    'Schließen Sie vorher die Seite und sperren Sie das Telefon, wenn Sie sehen wollen, wie ein Alarm kommt.',
  phoneDevices:
    '.match $n one {{Ein Telefon oder Browser von Ihnen nimmt Push an.}} * {{{$n} Telefone oder Browser von Ihnen nehmen Push an.}}',
  phoneFailed: 'Es ging nicht: {$why}',
  phoneNoAnswer: 'Der Agent hat nicht geantwortet. Push ist, wie es war.',
  phoneRefused: 'Der Push-Dienst dieses Browsers gab keine Adresse; ist das Telefon im Netz?',
  testOutcome: {
    delivered:
      'Gesendet. Sie erscheint in Sekunden; wenn nicht, sehen Sie nach den Mitteilungen und dem Energiesparen des Telefons.',
    later: 'Jetzt nicht gesendet.',
    gone: 'Kein Telefon von Ihnen nimmt noch Push an. Schalten Sie es wieder ein.',
    refused: 'Nicht gesendet.',
  },
} as const;
