<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context>
    <name></name>
    <message>
        <source> as a table</source>
        <comment>end of a table&apos;s name</comment>
        <translation> als Tabelle</translation>
    </message>
    <message>
        <source> of 10</source>
        <translation> von 10</translation>
    </message>
    <message>
        <source> or </source>
        <comment>between words of the notation</comment>
        <translation> oder </translation>
    </message>
    <message>
        <source> or </source>
        <comment>between units</comment>
        <translation> oder </translation>
    </message>
    <message>
        <source> years</source>
        <comment>after an age</comment>
        <translation> Jahre</translation>
    </message>
    <message>
        <source>&quot;{block}&quot; ends before it starts</source>
        <translation>„{block}“ endet, bevor er beginnt</translation>
    </message>
    <message>
        <source>&quot;{block}&quot; would have no day left</source>
        <translation>„{block}“ hätte keinen Tag mehr</translation>
    </message>
    <message>
        <source>&quot;{first}&quot; and &quot;{second}&quot; overlap on {start}</source>
        <translation>„{first}“ und „{second}“ überschneiden sich am {start}</translation>
    </message>
    <message>
        <source>&quot;{meaning}&quot; cannot be read: write a word such as easy or threshold</source>
        <translation>„{meaning}“ ist nicht lesbar: schreibe ein Wort wie easy oder threshold</translation>
    </message>
    <message>
        <source>&quot;{name}&quot; cannot be compared; easy, moderate, hard, time, distance, pace, effort and climb can: hard &gt; 10 min</source>
        <translation>„{name}“ lässt sich nicht vergleichen; locker, mittel, hart, Zeit, Strecke, Tempo, Anstrengung und Anstieg schon: hart &gt; 10 min</translation>
    </message>
    <message>
        <source>&quot;{name}&quot;: in {units}?</source>
        <translation>„{name}“: in {units}?</translation>
    </message>
    <message>
        <source>&quot;{name}&quot;: is the day first or the month?</source>
        <translation>„{name}“: zuerst der Tag oder der Monat?</translation>
    </message>
    <message>
        <source>&quot;{name}&quot;: its days could not be read.</source>
        <translation>„{name}“: die Tage darin waren nicht lesbar.</translation>
    </message>
    <message>
        <source>&quot;{text}&quot; is no heart rate: 152</source>
        <translation>„{text}“ ist keine Herzfrequenz: 152</translation>
    </message>
    <message>
        <source>&quot;{text}&quot; is no lactate: write 1.1</source>
        <translation>„{text}“ ist kein Laktatwert: schreibe 1.1</translation>
    </message>
    <message>
        <source>&quot;{text}&quot; is no lactate: write 1.8</source>
        <translation>„{text}“ ist kein Laktatwert: schreibe 1.8</translation>
    </message>
    <message>
        <source>&quot;{text}&quot; is no length: write 4, or 3:30</source>
        <translation>„{text}“ ist keine Länge: schreibe 4 oder 3:30</translation>
    </message>
    <message>
        <source>&quot;{text}&quot; is no pace: write 4:48</source>
        <translation>„{text}“ ist kein Tempo: schreibe 4:48</translation>
    </message>
    <message>
        <source>&quot;{text}&quot; is no speed: write 12.5 for km/h, or 4:48 for a pace</source>
        <translation>„{text}“ ist keine Geschwindigkeit: schreibe 12.5 für km/h oder 4:48 für ein Tempo</translation>
    </message>
    <message>
        <source>&quot;{typed}&quot; has over 59 minutes or seconds: write 44:10.</source>
        <translation>„{typed}“ hat über 59 Minuten oder Sekunden: schreibe 44:10.</translation>
    </message>
    <message>
        <source>&quot;{typed}&quot; is no pace: write 5:20.</source>
        <translation>„{typed}“ ist kein Tempo: schreibe 5:20.</translation>
    </message>
    <message>
        <source>&quot;{typed}&quot; is no time: write 44:10, or 1:35:20 with hours.</source>
        <translation>„{typed}“ ist keine Zeit: schreibe 44:10, oder 1:35:20 mit Stunden.</translation>
    </message>
    <message>
        <source>&quot;{value}&quot; is no pace</source>
        <translation>„{value}“ ist kein Tempo</translation>
    </message>
    <message>
        <source>&quot;{value}&quot; is no speed: give m/s such as 3.1, or a pace such as &quot;5:20/km&quot;</source>
        <translation>„{value}“ ist keine Geschwindigkeit: m/s angeben, etwa 3.1, oder ein Tempo, etwa „5:20/km“</translation>
    </message>
    <message>
        <source>&quot;{whole}&quot; cannot be split on its first day or outside of it</source>
        <translation>„{whole}“ lässt sich nicht am ersten Tag oder außerhalb teilen</translation>
    </message>
    <message>
        <source>&quot;{words}&quot; adds nothing yet.</source>
        <translation>„{words}“ ergibt noch nichts.</translation>
    </message>
    <message>
        <source>&quot;{word}&quot; already has a meaning in every diary: choose another word</source>
        <translation>„{word}“ hat schon in jedem Tagebuch eine Bedeutung: wähle ein anderes Wort</translation>
    </message>
    <message>
        <source>&quot;{word}&quot; is no word: write letters without a blank</source>
        <translation>„{word}“ ist kein Wort: schreibe Buchstaben ohne Leerzeichen</translation>
    </message>
    <message>
        <source>% a week</source>
        <translation>% je Woche</translation>
    </message>
    <message>
        <source>% of before</source>
        <translation>% von vorher</translation>
    </message>
    <message>
        <source>% of it</source>
        <translation>% davon</translation>
    </message>
    <message>
        <source>&amp;Back</source>
        <translation>&amp;Zurück</translation>
    </message>
    <message>
        <source>&amp;Distances and paces</source>
        <translation>Strecken &amp;und Tempo</translation>
    </message>
    <message>
        <source>&amp;Effort said</source>
        <translation>&amp;Empfundene Anstrengung</translation>
    </message>
    <message>
        <source>&amp;Kind: {kind}</source>
        <translation>&amp;Art: {kind}</translation>
    </message>
    <message>
        <source>&amp;Language</source>
        <translation>&amp;Sprache</translation>
    </message>
    <message>
        <source>&amp;Next ›</source>
        <translation>&amp;Nächste ›</translation>
    </message>
    <message>
        <source>&amp;Theme</source>
        <translation>&amp;Aussehen</translation>
    </message>
    <message>
        <source>&amp;Weeks begin on</source>
        <translation>&amp;Wochen beginnen am</translation>
    </message>
    <message>
        <source>,</source>
        <comment>thousands sign</comment>
        <translation>.</translation>
    </message>
    <message>
        <source>.</source>
        <comment>decimal sign</comment>
        <translation>,</translation>
    </message>
    <message>
        <source>/km</source>
        <translation>/km</translation>
    </message>
    <message>
        <source>/mile</source>
        <translation>/Meile</translation>
    </message>
    <message>
        <source>1 % uphill</source>
        <translation>1 % bergauf</translation>
    </message>
    <message>
        <source>1 h</source>
        <translation>1 h</translation>
    </message>
    <message>
        <source>1 mile</source>
        <translation>1 Meile</translation>
    </message>
    <message>
        <source>1 run is judged anew</source>
        <translation>1 Lauf wird neu beurteilt</translation>
    </message>
    <message>
        <source>10 km</source>
        <translation>10 km</translation>
    </message>
    <message>
        <source>15 min</source>
        <translation>15 min</translation>
    </message>
    <message>
        <source>2 % downhill</source>
        <translation>2 % bergab</translation>
    </message>
    <message>
        <source>2 h</source>
        <translation>2 h</translation>
    </message>
    <message>
        <source>200 m</source>
        <translation>200 m</translation>
    </message>
    <message>
        <source>24 weeks of an invented runner, to look round in. It opens in a window of its own and stays apart from your runs.</source>
        <translation>24 Wochen eines erfundenen Läufers, um sich umzusehen. Sie öffnet sich in einem eigenen Fenster und bleibt von deinen Läufen getrennt.</translation>
    </message>
    <message>
        <source>3 and 12 min trials</source>
        <translation>Versuche über 3 und 12 min</translation>
    </message>
    <message>
        <source>3 km</source>
        <translation>3 km</translation>
    </message>
    <message>
        <source>30 min</source>
        <translation>30 min</translation>
    </message>
    <message>
        <source>30 min trial</source>
        <translation>Versuch über 30 min</translation>
    </message>
    <message>
        <source>300 m</source>
        <translation>300 m</translation>
    </message>
    <message>
        <source>400 m</source>
        <translation>400 m</translation>
    </message>
    <message>
        <source>44:10 or 1:35:20</source>
        <translation>44:10 oder 1:35:20</translation>
    </message>
    <message>
        <source>5 km</source>
        <translation>5 km</translation>
    </message>
    <message>
        <source>A block is a stretch of whole days with one purpose. Its totals start at zero. Days in no block are shown by the month.</source>
        <translation>Ein Block ist ein Abschnitt ganzer Tage mit einem Zweck. Seine Summen beginnen bei null. Tage ohne Block werden nach Monaten gezeigt.</translation>
    </message>
    <message>
        <source>A block with a first week&apos;s volume tells what its weeks allow.</source>
        <translation>Ein Block mit einem Umfang der ersten Woche sagt, was seine Wochen erlauben.</translation>
    </message>
    <message>
        <source>A click opens it</source>
        <translation>Ein Klick öffnet sie</translation>
    </message>
    <message>
        <source>A curve needs three hours of judged running in each block shown; the shares stand in the table.</source>
        <translation>Eine Kurve braucht drei Stunden beurteiltes Laufen in jedem gezeigten Block; die Anteile stehen in der Tabelle.</translation>
    </message>
    <message>
        <source>A deleted original could not be removed: {error} ({folder}).</source>
        <translation>Ein gelöschtes Original konnte nicht entfernt werden: {error} ({folder}).</translation>
    </message>
    <message>
        <source>A distance that could not be read</source>
        <translation>Eine Strecke, die nicht lesbar war</translation>
    </message>
    <message>
        <source>A field test</source>
        <translation>Ein Feldtest</translation>
    </message>
    <message>
        <source>A file of the record could not be unpacked: {error}.</source>
        <translation>Eine Datei der Akte ließ sich nicht auspacken: {error}.</translation>
    </message>
    <message>
        <source>A line is a week</source>
        <translation>Eine Zeile ist eine Woche</translation>
    </message>
    <message>
        <source>A look round</source>
        <translation>Ein Rundblick</translation>
    </message>
    <message>
        <source>A look round, {n} of {whole}</source>
        <translation>Ein Rundblick, {n} von {whole}</translation>
    </message>
    <message>
        <source>A measured maximum beats a formula: from age alone, one runner in three is more than 10 beats away (208 − 0.7 × age; Tanaka and others, 2001).</source>
        <translation>Ein gemessenes Maximum ist besser als eine Formel: allein nach dem Alter liegt einer von drei Läufern mehr als 10 Schläge daneben (208 − 0,7 × Alter; Tanaka und andere, 2001).</translation>
    </message>
    <message>
        <source>A model of an average runner, not a measurement of this one. Hard running is for healthy days: stop with chest pain, faintness or pain, and see a doctor.</source>
        <translation>Ein Modell eines durchschnittlichen Läufers, keine Messung an diesem. Hartes Laufen ist für gesunde Tage: bei Brustschmerz, Ohnmachtsgefühl oder Schmerzen aufhören und ärztlichen Rat holen.</translation>
    </message>
    <message>
        <source>A number alone is</source>
        <translation>Eine Zahl allein heißt</translation>
    </message>
    <message>
        <source>A paper log</source>
        <translation>Ein Papiertagebuch</translation>
    </message>
    <message>
        <source>A part of its laps and events could not be read.</source>
        <translation>Ein Teil der Runden und Ereignisse war nicht lesbar.</translation>
    </message>
    <message>
        <source>A plan is a proposal. With pain, illness, chest pain, faintness or unusual breathlessness stop and see a doctor; after an injury go by your doctor or coach, not by these weeks.</source>
        <translation>Ein Plan ist ein Vorschlag. Bei Schmerzen, Krankheit, Brustschmerz, Schwindel mit Ohnmachtsgefühl oder ungewöhnlicher Atemnot aufhören und ärztlichen Rat holen; nach einer Verletzung gilt, was Arzt oder Trainer sagen, nicht diese Wochen.</translation>
    </message>
    <message>
        <source>A race</source>
        <translation>Ein Rennen</translation>
    </message>
    <message>
        <source>A race to come</source>
        <translation>Ein kommendes Rennen</translation>
    </message>
    <message>
        <source>A recent race</source>
        <translation>Ein Rennen aus letzter Zeit</translation>
    </message>
    <message>
        <source>A remark that stands on the page</source>
        <translation>Eine Bemerkung, die auf der Seite steht</translation>
    </message>
    <message>
        <source>A repetition</source>
        <translation>Eine Wiederholung</translation>
    </message>
    <message>
        <source>A row is a week of both, easy next to the middle, hard outermost.</source>
        <translation>Eine Zeile ist eine Woche von beiden, Lockeres neben der Mitte, Hartes ganz außen.</translation>
    </message>
    <message>
        <source>A runner needs a name.</source>
        <translation>Ein Läufer braucht einen Namen.</translation>
    </message>
    <message>
        <source>A season starts with what you have run</source>
        <translation>Eine Saison beginnt mit dem, was du gelaufen bist</translation>
    </message>
    <message>
        <source>A stair is a run, as long as its running time: the low step is easy, the middle one moderate, the high one hard. Arrow keys go from day to day, Enter opens a run.</source>
        <translation>Eine Treppe ist ein Lauf, so lang wie seine Laufzeit: die niedrige Stufe ist locker, die mittlere mittel, die hohe hart. Pfeiltasten gehen von Tag zu Tag, Eingabe öffnet einen Lauf.</translation>
    </message>
    <message>
        <source>A table knows no samples: it is judged once an effort is said.</source>
        <translation>Eine Tabelle kennt keine Messwerte: beurteilt wird, sobald eine Anstrengung angegeben ist.</translation>
    </message>
    <message>
        <source>A time of day, or how long it took?</source>
        <translation>Eine Uhrzeit oder die Dauer?</translation>
    </message>
    <message>
        <source>A time that could not be read</source>
        <translation>Eine Zeit, die nicht lesbar war</translation>
    </message>
    <message>
        <source>A training diary, typed or pasted as it stands: one line a day, understood beside it as you type.</source>
        <translation>Ein Trainingstagebuch, getippt oder eingefügt, wie es ist: eine Zeile je Tag, beim Tippen daneben verstanden.</translation>
    </message>
    <message>
        <source>A usual week held {week}, the longest run took {run}</source>
        <translation>Eine übliche Woche umfasste {week}, der längste Lauf dauerte {run}</translation>
    </message>
    <message>
        <source>A usual week with running held {week}, the longest run took {run}</source>
        <translation>Eine übliche Woche mit Laufen umfasste {week}, der längste Lauf dauerte {run}</translation>
    </message>
    <message>
        <source>A week nowadays</source>
        <translation>Eine Woche zurzeit</translation>
    </message>
    <message>
        <source>A4 across</source>
        <translation>A4 quer</translation>
    </message>
    <message>
        <source>About</source>
        <translation>Über</translation>
    </message>
    <message>
        <source>About half an hour after a run, ask how hard the whole of it was: 0 rest, 2 easy, 3 moderate, 5 hard, 7 very hard, 10 the hardest there is. Easy runs that are regularly said to be 4 or more are no easy runs, whatever the pace says. The number is kept with each session.</source>
        <translation>Frage etwa eine halbe Stunde nach einem Lauf, wie hart er im Ganzen war: 0 Ruhe, 2 leicht, 3 mäßig, 5 hart, 7 sehr hart, 10 das Härteste, was es gibt. Lockere Läufe, die regelmäßig 4 oder mehr bekommen, sind keine lockeren Läufe, was immer das Tempo sagt. Die Zahl wird bei jeder Einheit aufbewahrt.</translation>
    </message>
    <message>
        <source>About half of lately, {time}, all of it easy: the week after {race} (common practice, no source); no block is planned for it.</source>
        <translation>Etwa die Hälfte der letzten Zeit, {time}, alles locker: die Woche nach {race} (übliche Praxis, ohne Quelle); für sie ist kein Block geplant.</translation>
    </message>
    <message>
        <source>About the same</source>
        <translation>Etwa gleich</translation>
    </message>
    <message>
        <source>About {n} s {per} slower in that part would have kept all of them easy.</source>
        <translation>Etwa {n} s {per} langsamer in diesem Teil, und alle wären locker geblieben.</translation>
    </message>
    <message>
        <source>About {n} s {per} slower in that part would have kept it easy.</source>
        <translation>Etwa {n} s {per} langsamer in diesem Teil, und er wäre locker geblieben.</translation>
    </message>
    <message>
        <source>About {n} s {per} slower on those climbs would have kept all of them easy.</source>
        <translation>Etwa {n} s {per} langsamer an diesen Anstiegen, und alle wären locker geblieben.</translation>
    </message>
    <message>
        <source>About {n} s {per} slower on those climbs would have kept it easy.</source>
        <translation>Etwa {n} s {per} langsamer an diesen Anstiegen, und er wäre locker geblieben.</translation>
    </message>
    <message>
        <source>About {time} (as lately): {parts}.</source>
        <translation>Etwa {time} (wie zuletzt): {parts}.</translation>
    </message>
    <message>
        <source>About {time} (planned): {parts}.</source>
        <translation>Etwa {time} (geplant): {parts}.</translation>
    </message>
    <message>
        <source>About, from hard efforts and steady running:</source>
        <translation>Ungefähr, aus harten Belastungen und gleichmäßigem Laufen:</translation>
    </message>
    <message>
        <source>About: {values}</source>
        <translation>Ungefähr: {values}</translation>
    </message>
    <message>
        <source>Above LT1 by heart rate for {n} min of easy running (warmth, fatigue?).</source>
        <translation>Nach Herzfrequenz {n} min lockeres Laufen über LT1 (Wärme, Müdigkeit?).</translation>
    </message>
    <message>
        <source>Add a block</source>
        <translation>Block hinzufügen</translation>
    </message>
    <message>
        <source>Add a race</source>
        <translation>Rennen hinzufügen</translation>
    </message>
    <message>
        <source>Add a runner</source>
        <translation>Läufer hinzufügen</translation>
    </message>
    <message>
        <source>Add a runner makes another runner&apos;s record, kept apart from this one; Take in a record merges a copy of this runner&apos;s.</source>
        <translation>„Läufer hinzufügen“ legt die Akte eines anderen Läufers an, getrennt von dieser; „Akte einlesen“ führt eine Kopie der Akte dieses Läufers zusammen.</translation>
    </message>
    <message>
        <source>Add a word</source>
        <translation>Wort hinzufügen</translation>
    </message>
    <message>
        <source>Add copied files</source>
        <translation>Kopierte Dateien hinzufügen</translation>
    </message>
    <message>
        <source>Add recordings</source>
        <translation>Aufzeichnungen hinzufügen</translation>
    </message>
    <message>
        <source>Add {block}</source>
        <translation>{block} hinzufügen</translation>
    </message>
    <message>
        <source>Add {race}</source>
        <translation>{race} hinzufügen</translation>
    </message>
    <message>
        <source>Added: {what}</source>
        <translation>Hinzugefügt: {what}</translation>
    </message>
    <message>
        <source>After illness or injury come back by easy running first. Doctors and coaches come before this page.</source>
        <translation>Nach Krankheit oder Verletzung zuerst mit lockerem Laufen zurückkommen. Ärzte und Trainer gehen vor dieser Seite.</translation>
    </message>
    <message>
        <source>After {race}: a week or two of easy running, and rest, come first.</source>
        <translation>Nach {race}: zuerst ein bis zwei Wochen lockeres Laufen und Ruhe.</translation>
    </message>
    <message>
        <source>Age in years</source>
        <translation>Alter in Jahren</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>All files</source>
        <translation>Alle Dateien</translation>
    </message>
    <message>
        <source>All files (*)</source>
        <translation>Alle Dateien (*)</translation>
    </message>
    <message>
        <source>All pages</source>
        <translation>Alle Seiten</translation>
    </message>
    <message>
        <source>All three at most</source>
        <translation>Alle drei höchstens</translation>
    </message>
    <message>
        <source>All {n}</source>
        <translation>Alle {n}</translation>
    </message>
    <message>
        <source>Already here</source>
        <translation>Schon da</translation>
    </message>
    <message>
        <source>Alt with an arrow moves a page.</source>
        <translation>Alt mit einem Pfeil verschiebt eine Seite.</translation>
    </message>
    <message>
        <source>Among 5,205 runners more injuries were reported above 10 %; observed, not tested.</source>
        <translation>Unter 5.205 Läufern wurden über 10 % mehr Verletzungen berichtet; beobachtet, nicht geprüft.</translation>
    </message>
    <message>
        <source>An easier week is</source>
        <translation>Eine leichtere Woche ist</translation>
    </message>
    <message>
        <source>An easier week&apos;s share, per cent</source>
        <translation>Anteil einer leichteren Woche, Prozent</translation>
    </message>
    <message>
        <source>An original is missing from the store: {name}.</source>
        <translation>In der Ablage fehlt ein Original: {name}.</translation>
    </message>
    <message>
        <source>And</source>
        <translation>Und</translation>
    </message>
    <message>
        <source>And {n} more with {time}.</source>
        <translation>Und {n} weitere mit {time}.</translation>
    </message>
    <message>
        <source>And {n} more.</source>
        <translation>Und {n} weitere.</translation>
    </message>
    <message>
        <source>Another activity in the file could not be read: {reason}</source>
        <translation>Eine weitere Aktivität in der Datei war nicht lesbar: {reason}</translation>
    </message>
    <message>
        <source>Another language or week is shown once this is closed.</source>
        <translation>Eine andere Sprache oder Woche erscheint, sobald dies geschlossen ist.</translation>
    </message>
    <message>
        <source>Another race</source>
        <translation>Noch ein Rennen</translation>
    </message>
    <message>
        <source>Apr</source>
        <translation>Apr</translation>
    </message>
    <message>
        <source>April</source>
        <translation>April</translation>
    </message>
    <message>
        <source>Archives are nested more than {most} deep.</source>
        <translation>Archive sind tiefer als {most} ineinander gepackt.</translation>
    </message>
    <message>
        <source>Around repetitions</source>
        <translation>Um Wiederholungen</translation>
    </message>
    <message>
        <source>As a spreadsheet it is larger than {mb} MB.</source>
        <translation>Als Tabellendatei ist sie größer als {mb} MB.</translation>
    </message>
    <message>
        <source>As a text it is larger than {mb} MB.</source>
        <translation>Als Text ist sie größer als {mb} MB.</translation>
    </message>
    <message>
        <source>As is usual in this country</source>
        <translation>Wie im Land üblich</translation>
    </message>
    <message>
        <source>As lines of the plan, to be changed there:</source>
        <translation>Als Zeilen des Plans, dort zu ändern:</translation>
    </message>
    <message>
        <source>As much as lately, about {time}; no block is planned for it.</source>
        <translation>So viel wie zuletzt, etwa {time}; dafür ist kein Block geplant.</translation>
    </message>
    <message>
        <source>Ask again</source>
        <translation>Wieder fragen</translation>
    </message>
    <message>
        <source>Ask again next time</source>
        <translation>Nächstes Mal wieder fragen</translation>
    </message>
    <message>
        <source>Asks once more about what was left out</source>
        <translation>Fragt noch einmal nach dem Weggelassenen</translation>
    </message>
    <message>
        <source>At the right the same metres as at the left,</source>
        <translation>Rechts dieselben Meter wie links,</translation>
    </message>
    <message>
        <source>Aug</source>
        <translation>Aug</translation>
    </message>
    <message>
        <source>August</source>
        <translation>August</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Back from race day</source>
        <translation>Vom Renntag zurück</translation>
    </message>
    <message>
        <source>Back to the season</source>
        <translation>Zurück zur Saison</translation>
    </message>
    <message>
        <source>Base</source>
        <translation>Grundlage</translation>
    </message>
    <message>
        <source>Before a hard test</source>
        <translation>Vor einem harten Test</translation>
    </message>
    <message>
        <source>Begin near the {hours} a week of {block}.</source>
        <translation>Beginne nahe den {hours} je Woche von {block}.</translation>
    </message>
    <message>
        <source>Below it: {strips}.</source>
        <translation>Darunter: {strips}.</translation>
    </message>
    <message>
        <source>Belt speed</source>
        <translation>Bandgeschwindigkeit</translation>
    </message>
    <message>
        <source>Best of the season</source>
        <translation>Das Beste der Saison</translation>
    </message>
    <message>
        <source>Between these two values the truth lies in 9 of 10 runs alike.</source>
        <translation>Zwischen diesen beiden Werten liegt die Wahrheit bei 9 von 10 solchen Läufen.</translation>
    </message>
    <message>
        <source>Between two tests:</source>
        <translation>Zwischen zwei Tests:</translation>
    </message>
    <message>
        <source>Between two tests: step</source>
        <translation>Zwischen zwei Tests: Stufe</translation>
    </message>
    <message>
        <source>Between two tests: straight line</source>
        <translation>Zwischen zwei Tests: gerade Linie</translation>
    </message>
    <message>
        <source>Between {first} and {second}: drag, or up and down, then Enter</source>
        <translation>Zwischen {first} und {second}: ziehen, oder auf und ab, dann Eingabe</translation>
    </message>
    <message>
        <source>Black ink</source>
        <translation>Schwarze Tinte</translation>
    </message>
    <message>
        <source>Block</source>
        <translation>Block</translation>
    </message>
    <message>
        <source>Block by block</source>
        <translation>Block für Block</translation>
    </message>
    <message>
        <source>Block name</source>
        <translation>Name des Blocks</translation>
    </message>
    <message>
        <source>Block shown as now</source>
        <translation>Block als „jetzt“</translation>
    </message>
    <message>
        <source>Block shown as then</source>
        <translation>Block als „damals“</translation>
    </message>
    <message>
        <source>Blocks</source>
        <translation>Blöcke</translation>
    </message>
    <message>
        <source>Blocks and races</source>
        <translation>Blöcke und Rennen</translation>
    </message>
    <message>
        <source>Blocks and races…</source>
        <translation>Blöcke und Rennen…</translation>
    </message>
    <message>
        <source>Both are predicted to ask about alike.</source>
        <translation>Beide fordern nach der Vorhersage etwa gleich viel.</translation>
    </message>
    <message>
        <source>Boundaries estimated from {source}.</source>
        <translation>Grenzen geschätzt aus {source}.</translation>
    </message>
    <message>
        <source>Boundaries from {source}.</source>
        <translation>Grenzen aus {source}.</translation>
    </message>
    <message>
        <source>Bring lines back</source>
        <translation>Zeilen zurückholen</translation>
    </message>
    <message>
        <source>Build-up</source>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>Build-up by block</source>
        <translation>Verlauf nach Blöcken</translation>
    </message>
    <message>
        <source>Build-up by block as a table</source>
        <translation>Verlauf nach Blöcken als Tabelle</translation>
    </message>
    <message>
        <source>By block</source>
        <translation>Nach Blöcken</translation>
    </message>
    <message>
        <source>By distance: {said}</source>
        <translation>Nach Strecke: {said}</translation>
    </message>
    <message>
        <source>By estimated thresholds.</source>
        <translation>Nach geschätzten Schwellen.</translation>
    </message>
    <message>
        <source>By its positions the watch&apos;s speed was taken {share} % faster.</source>
        <translation>Nach den Positionen wurde die Geschwindigkeit der Uhr {share} % schneller genommen.</translation>
    </message>
    <message>
        <source>By its positions the watch&apos;s speed was taken {share} % slower.</source>
        <translation>Nach den Positionen wurde die Geschwindigkeit der Uhr {share} % langsamer genommen.</translation>
    </message>
    <message>
        <source>By sessions: {said}</source>
        <translation>Nach Einheiten: {said}</translation>
    </message>
    <message>
        <source>By time: {said}</source>
        <translation>Nach Zeit: {said}</translation>
    </message>
    <message>
        <source>Bytes after its end that are no FIT, not read: {bytes}.</source>
        <translation>Bytes nach dem Ende, die kein FIT sind, nicht gelesen: {bytes}.</translation>
    </message>
    <message>
        <source>Bytes {first} to {last} could not be read.</source>
        <translation>Bytes {first} bis {last} waren nicht lesbar.</translation>
    </message>
    <message>
        <source>Calendar</source>
        <translation>Kalender</translation>
    </message>
    <message>
        <source>Calendar (*.ics)</source>
        <translation>Kalender (*.ics)</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Change a planned session</source>
        <translation>Geplante Einheit ändern</translation>
    </message>
    <message>
        <source>Change blocks and races</source>
        <translation>Blöcke und Rennen ändern</translation>
    </message>
    <message>
        <source>Change kind</source>
        <translation>Art ändern</translation>
    </message>
    <message>
        <source>Change kind of {n} sessions</source>
        <translation>Art von {n} Einheiten ändern</translation>
    </message>
    <message>
        <source>Change the review</source>
        <translation>Rückblick ändern</translation>
    </message>
    <message>
        <source>Change the shorthand</source>
        <translation>Kürzel ändern</translation>
    </message>
    <message>
        <source>Change the words of a run</source>
        <translation>Worte eines Laufs ändern</translation>
    </message>
    <message>
        <source>Change the words…</source>
        <translation>Worte ändern…</translation>
    </message>
    <message>
        <source>Change the zone round home</source>
        <translation>Umkreis ums Zuhause ändern</translation>
    </message>
    <message>
        <source>Change this run</source>
        <translation>Diesen Lauf ändern</translation>
    </message>
    <message>
        <source>Change thresholds</source>
        <translation>Schwellen ändern</translation>
    </message>
    <message>
        <source>Change {block}</source>
        <translation>{block} ändern</translation>
    </message>
    <message>
        <source>Change {name}</source>
        <translation>{name} ändern</translation>
    </message>
    <message>
        <source>Change {race}</source>
        <translation>{race} ändern</translation>
    </message>
    <message>
        <source>Changing the words of the run of {day}.</source>
        <translation>Ändert die Worte des Laufs vom {day}.</translation>
    </message>
    <message>
        <source>Check</source>
        <translation>Prüfen</translation>
    </message>
    <message>
        <source>Choose a file…</source>
        <translation>Datei wählen…</translation>
    </message>
    <message>
        <source>Choose a folder of recordings</source>
        <translation>Ordner mit Aufzeichnungen wählen</translation>
    </message>
    <message>
        <source>Choose a folder…</source>
        <translation>Ordner wählen…</translation>
    </message>
    <message>
        <source>Choose another folder, or free some room on the disk.</source>
        <translation>Wähle einen anderen Ordner oder schaffe Platz auf dem Datenträger.</translation>
    </message>
    <message>
        <source>Choose files…</source>
        <translation>Dateien wählen…</translation>
    </message>
    <message>
        <source>Choose in a calendar</source>
        <translation>Im Kalender wählen</translation>
    </message>
    <message>
        <source>Choose recordings</source>
        <translation>Aufzeichnungen wählen</translation>
    </message>
    <message>
        <source>Chosen by the program</source>
        <translation>Vom Programm gewählt</translation>
    </message>
    <message>
        <source>Chosen session</source>
        <translation>Gewählte Einheit</translation>
    </message>
    <message>
        <source>Classes and index by Treff et al. 2019: polarised is easy &gt; hard &gt; moderate with an index above 2; pyramidal is easy &gt; moderate &gt; hard. Sessions count as hard from 5 minutes hard, as moderate from 10 minutes moderate. Never compare shares counted in different ways.</source>
        <translation>Klassen und Index nach Treff et al. 2019: polarisiert ist locker &gt; hart &gt; mittel mit einem Index über 2; pyramidal ist locker &gt; mittel &gt; hart. Einheiten zählen ab 5 Minuten hart als hart, ab 10 Minuten mittel als mittel. Nie Anteile vergleichen, die verschieden gezählt sind.</translation>
    </message>
    <message>
        <source>Cleaning</source>
        <translation>Bereinigung</translation>
    </message>
    <message>
        <source>Clear</source>
        <translation>Leeren</translation>
    </message>
    <message>
        <source>Climbed</source>
        <translation>Bergauf</translation>
    </message>
    <message>
        <source>Climbs</source>
        <translation>Anstiege</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Columns of {file}</source>
        <translation>Spalten von {file}</translation>
    </message>
    <message>
        <source>Common practice, no source: preparation of at most 12 weeks, growth, easier weeks. A taper of about two weeks with 41 to 60 % less running: Bosquet 2007, from memory. Growing slowly was not shown to prevent injuries (Buist 2008). With pain or illness do less, and ask a doctor or coach before you train hard if your health has changed.</source>
        <translation>Übliche Praxis, ohne Quelle: Vorbereitung von höchstens 12 Wochen, Wachstum, leichtere Wochen. Ein Tapering von etwa zwei Wochen mit 41 bis 60 % weniger Laufen: Bosquet 2007, aus dem Gedächtnis. Dass langsames Wachsen Verletzungen verhütet, wurde nicht gezeigt (Buist 2008). Bei Schmerzen oder Krankheit weniger tun, und vor hartem Training Arzt oder Trainer fragen, wenn sich deine Gesundheit verändert hat.</translation>
    </message>
    <message>
        <source>Compare other blocks</source>
        <translation>Andere Blöcke vergleichen</translation>
    </message>
    <message>
        <source>Copy a planned session</source>
        <translation>Geplante Einheit kopieren</translation>
    </message>
    <message>
        <source>Copy a week&apos;s plan</source>
        <translation>Plan einer Woche kopieren</translation>
    </message>
    <message>
        <source>Copy as text</source>
        <translation>Als Text kopieren</translation>
    </message>
    <message>
        <source>Copy numbers</source>
        <translation>Zahlen kopieren</translation>
    </message>
    <message>
        <source>Copy picture</source>
        <translation>Bild kopieren</translation>
    </message>
    <message>
        <source>Copy to next week</source>
        <translation>In die nächste Woche kopieren</translation>
    </message>
    <message>
        <source>Correct a start</source>
        <translation>Startzeit berichtigen</translation>
    </message>
    <message>
        <source>Correct a zone</source>
        <translation>Zeitzone berichtigen</translation>
    </message>
    <message>
        <source>Correct {n} starts</source>
        <translation>{n} Startzeiten berichtigen</translation>
    </message>
    <message>
        <source>Correct {n} zones</source>
        <translation>{n} Zeitzonen berichtigen</translation>
    </message>
    <message>
        <source>Corrections</source>
        <translation>Korrekturen</translation>
    </message>
    <message>
        <source>Corrections…</source>
        <translation>Korrekturen…</translation>
    </message>
    <message>
        <source>Count</source>
        <translation>Anzahl</translation>
    </message>
    <message>
        <source>Count all of it as easy</source>
        <translation>Alles als locker zählen</translation>
    </message>
    <message>
        <source>Count all of it as hard</source>
        <translation>Alles als hart zählen</translation>
    </message>
    <message>
        <source>Count all of it as moderate</source>
        <translation>Alles als mittel zählen</translation>
    </message>
    <message>
        <source>Count back from {race}</source>
        <translation>Von {race} zurückrechnen</translation>
    </message>
    <message>
        <source>Count the run as {shade}</source>
        <translation>Den Lauf als {shade} zählen</translation>
    </message>
    <message>
        <source>Count this run&apos;s moderate minutes as meant</source>
        <translation>Die mittleren Minuten dieses Laufs als beabsichtigt zählen</translation>
    </message>
    <message>
        <source>Count {stretch} as {shade}</source>
        <translation>{stretch} als {shade} zählen</translation>
    </message>
    <message>
        <source>Counting back</source>
        <translation>Rechnet zurück</translation>
    </message>
    <message>
        <source>Crept up late</source>
        <translation>Spät hochgeschlichen</translation>
    </message>
    <message>
        <source>Critical speed</source>
        <translation>Kritische Geschwindigkeit</translation>
    </message>
    <message>
        <source>Cut a session in two</source>
        <translation>Einheit in zwei teilen</translation>
    </message>
    <message>
        <source>Cut in two</source>
        <translation>In zwei teilen</translation>
    </message>
    <message>
        <source>Cut off all after it</source>
        <translation>Alles danach abschneiden</translation>
    </message>
    <message>
        <source>Cut off all before it</source>
        <translation>Alles davor abschneiden</translation>
    </message>
    <message>
        <source>Cut so long after the start</source>
        <translation>So lange nach dem Start geteilt</translation>
    </message>
    <message>
        <source>Cycling</source>
        <translation>Radfahren</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>Day or month first?</source>
        <translation>Zuerst der Tag oder der Monat?</translation>
    </message>
    <message>
        <source>Day, time, distance and altitude can still tell someone who knows the runner where a run was.</source>
        <translation>Tag, Uhrzeit, Strecke und Höhe können jemandem, der die Läuferin oder den Läufer kennt, noch immer sagen, wo ein Lauf war.</translation>
    </message>
    <message>
        <source>Days from one hard day to the next, at least.
Many runners over 40 take 3 or more.</source>
        <translation>Tage von einem harten Tag zum nächsten, mindestens.
Viele Läufer über 40 nehmen 3 oder mehr.</translation>
    </message>
    <message>
        <source>Dec</source>
        <translation>Dez</translation>
    </message>
    <message>
        <source>December</source>
        <translation>Dezember</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>Delete session</source>
        <translation>Einheit löschen</translation>
    </message>
    <message>
        <source>Delete the session</source>
        <translation>Einheit löschen</translation>
    </message>
    <message>
        <source>Delete {n} sessions</source>
        <translation>{n} Einheiten löschen</translation>
    </message>
    <message>
        <source>Deleted: {name}, {day}</source>
        <translation>Gelöscht: {name}, {day}</translation>
    </message>
    <message>
        <source>Deleted: {n} session</source>
        <translation>Gelöscht: {n} Einheit</translation>
    </message>
    <message>
        <source>Deleted: {n} sessions</source>
        <translation>Gelöscht: {n} Einheiten</translation>
    </message>
    <message>
        <source>Distance</source>
        <translation>Strecke</translation>
    </message>
    <message>
        <source>Distance above it</source>
        <translation>Strecke darüber</translation>
    </message>
    <message>
        <source>Distance and time do not fit each other, the time left out</source>
        <translation>Strecke und Zeit passen nicht zusammen, die Zeit weggelassen</translation>
    </message>
    <message>
        <source>Distance in {unit}</source>
        <translation>Strecke in {unit}</translation>
    </message>
    <message>
        <source>Distance of the race</source>
        <translation>Strecke des Rennens</translation>
    </message>
    <message>
        <source>Distance, {unit}</source>
        <translation>Strecke, {unit}</translation>
    </message>
    <message>
        <source>Distance: a name, or a number of {unit}</source>
        <translation>Strecke: ein Name oder eine Zahl in {unit}</translation>
    </message>
    <message>
        <source>Does that time fit the distance?</source>
        <translation>Passt diese Zeit zur Strecke?</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Done again: {step}</source>
        <translation>Wiederhergestellt: {step}</translation>
    </message>
    <message>
        <source>Double</source>
        <translation>Doppel</translation>
    </message>
    <message>
        <source>Down {percent} %</source>
        <translation>{percent} % weniger</translation>
    </message>
    <message>
        <source>Drag the block, or Alt with up and down</source>
        <translation>Den Block ziehen, oder Alt mit auf und ab</translation>
    </message>
    <message>
        <source>Drag the chart to a document or a folder, or click to copy or save it</source>
        <translation>Das Diagramm in ein Dokument oder einen Ordner ziehen, oder klicken, um es zu kopieren oder zu speichern</translation>
    </message>
    <message>
        <source>Drag to another day, or M, arrows and Enter</source>
        <translation>Auf einen anderen Tag ziehen, oder M, Pfeile und Eingabe</translation>
    </message>
    <message>
        <source>Drawing (*.svg)</source>
        <translation>Zeichnung (*.svg)</translation>
    </message>
    <message>
        <source>Drop recordings here</source>
        <translation>Aufzeichnungen hier ablegen</translation>
    </message>
    <message>
        <source>Each block starts at zero</source>
        <translation>Jeder Block beginnt bei null</translation>
    </message>
    <message>
        <source>Each line becomes a run here, as you type: a day, how long, how hard. What is not certain is asked about; until you answer, that piece is kept unjudged. Nothing is kept before you press Keep.</source>
        <translation>Jede Zeile wird hier beim Tippen zu einem Lauf: ein Tag, wie lang, wie hart. Was nicht sicher ist, wird gefragt; bis du antwortest, bleibt dieses Stück unbeurteilt. Nichts wird behalten, bevor du „Behalten“ drückst.</translation>
    </message>
    <message>
        <source>Each of these can be undone.</source>
        <translation>Jedes davon lässt sich rückgängig machen.</translation>
    </message>
    <message>
        <source>Easy</source>
        <translation>Locker</translation>
    </message>
    <message>
        <source>Easy / moderate / hard: by time about {time}, by distance about {distance}, by sessions about {sessions} ({counts}).</source>
        <translation>Locker / mittel / hart: nach Zeit etwa {time}, nach Strecke etwa {distance}, nach Einheiten etwa {sessions} ({counts}).</translation>
    </message>
    <message>
        <source>Easy / moderate / hard: by time {time}, by distance {distance}, by sessions {sessions} ({counts}).</source>
        <translation>Locker / mittel / hart: nach Zeit {time}, nach Strecke {distance}, nach Einheiten {sessions} ({counts}).</translation>
    </message>
    <message>
        <source>Easy about {time}</source>
        <translation>Locker etwa {time}</translation>
    </message>
    <message>
        <source>Easy builds up above the line; moderate and hard hang below, beside what is wanted.</source>
        <translation>Lockeres wächst über der Linie; Mittleres und Hartes hängen darunter, neben dem Soll.</translation>
    </message>
    <message>
        <source>Easy ceiling</source>
        <translation>Obergrenze für locker</translation>
    </message>
    <message>
        <source>Easy in hand</source>
        <translation>Lockeres voraus</translation>
    </message>
    <message>
        <source>Easy is done.</source>
        <translation>Lockeres ist erledigt.</translation>
    </message>
    <message>
        <source>Easy is low and outlined, moderate is middle and slanted, hard is high and upright</source>
        <translation>Locker ist niedrig und umrandet, mittel ist halbhoch und schräg, hart ist hoch und senkrecht</translation>
    </message>
    <message>
        <source>Easy share: {before} to {after} %</source>
        <translation>Anteil locker: {before} zu {after} %</translation>
    </message>
    <message>
        <source>Easy time beyond what the block&apos;s wanted share asks for so far; easy short is what is missing.</source>
        <translation>Lockere Zeit über das hinaus, was das Soll des Blocks bisher verlangt; „Lockeres fehlt“ ist, was noch fehlt.</translation>
    </message>
    <message>
        <source>Easy time of all judged running time. Four fifths or more over a whole cycle is common among distance runners.</source>
        <translation>Lockere Zeit von aller beurteilten Laufzeit. Vier Fünftel oder mehr über einen ganzen Zyklus sind bei Langstreckenläufern üblich.</translation>
    </message>
    <message>
        <source>Easy under {time}</source>
        <translation>Locker unter {time}</translation>
    </message>
    <message>
        <source>Easy wanted</source>
        <translation>Locker soll</translation>
    </message>
    <message>
        <source>Easy {share}</source>
        <translation>Locker {share}</translation>
    </message>
    <message>
        <source>Easy {time}</source>
        <translation>Locker {time}</translation>
    </message>
    <message>
        <source>Easy, moderate and hard time added up from the first day of a block.</source>
        <translation>Lockere, mittlere und harte Zeit, ab dem ersten Tag eines Blocks zusammengezählt.</translation>
    </message>
    <message>
        <source>Edge between {first} and {second}, {day}. Up and down move it by a week, Enter keeps it.</source>
        <translation>Grenze zwischen {first} und {second}, {day}. Auf und ab verschieben sie um eine Woche, Eingabe behält sie.</translation>
    </message>
    <message>
        <source>Edit note</source>
        <translation>Notiz ändern</translation>
    </message>
    <message>
        <source>Effort said</source>
        <translation>Empfundene Anstrengung</translation>
    </message>
    <message>
        <source>Empties the text; Ctrl+Z in it brings it back</source>
        <translation>Leert den Text; Strg+Z darin holt ihn zurück</translation>
    </message>
    <message>
        <source>Enter opens a run, Esc goes back.</source>
        <translation>Eingabe öffnet einen Lauf, Esc geht zurück.</translation>
    </message>
    <message>
        <source>Enter opens it</source>
        <translation>Eingabe öffnet sie</translation>
    </message>
    <message>
        <source>Enter: next day. Ctrl+Enter: another line. Drag a day, or M, to move.</source>
        <translation>Eingabe: nächster Tag. Strg+Eingabe: weitere Zeile. Verschieben: Tag ziehen oder M.</translation>
    </message>
    <message>
        <source>Equal races by two models</source>
        <translation>Gleichwertige Rennen nach zwei Modellen</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Estimated thresholds</source>
        <translation>Geschätzte Schwellen</translation>
    </message>
    <message>
        <source>Estimates and formulas can be well off for one person. With heart disease, heart medicines, pain, illness, or after a long break, ask a doctor before training hard; stop if you feel chest pain, faintness or unusual breathlessness.</source>
        <translation>Schätzungen und Formeln können bei einem einzelnen Menschen weit danebenliegen. Bei einer Herzkrankheit, Herzmedikamenten, Schmerzen, Krankheit oder nach langer Pause vor hartem Training ärztlichen Rat holen; aufhören bei Brustschmerz, Ohnmachtsgefühl oder ungewöhnlicher Atemnot.</translation>
    </message>
    <message>
        <source>Every block held its easy share</source>
        <translation>Jeder Block hielt seinen Anteil locker</translation>
    </message>
    <message>
        <source>Every dot is one of the {n} sessions of {kind}; faster is higher. The bar is a session&apos;s mean.</source>
        <translation>Jeder Punkt ist eine der {n} Einheiten mit {kind}; schneller ist höher. Der Balken ist das Mittel einer Einheit.</translation>
    </message>
    <message>
        <source>Every how many weeks one is easier</source>
        <translation>Alle wie viele Wochen eine leichter ist</translation>
    </message>
    <message>
        <source>Every line a week, every stair a run: low easy, middle moderate, high hard.</source>
        <translation>Jede Zeile eine Woche, jede Treppe ein Lauf: niedrig locker, halbhoch mittel, hoch hart.</translation>
    </message>
    <message>
        <source>Every moderate minute has one cause. Longest first; what was meant stands last.</source>
        <translation>Jede mittlere Minute hat eine Ursache. Die längste zuerst; was beabsichtigt war, steht zuletzt.</translation>
    </message>
    <message>
        <source>Every original file as it is, with all its places and what the watch wrote in it, and the notes, shadings, thresholds and plan. The zone round home does not apply to it.</source>
        <translation>Jede Originaldatei, wie sie ist, mit allen Orten und allem, was die Uhr hineinschrieb, dazu Notizen, Stufen von Hand, Schwellen und Plan. Der Umkreis ums Zuhause gilt dafür nicht.</translation>
    </message>
    <message>
        <source>Every run is judged by them, without changing anything yet.</source>
        <translation>Jeder Lauf wird danach beurteilt, noch ohne etwas zu ändern.</translation>
    </message>
    <message>
        <source>Every second of every run is judged easy, moderate or hard, against your own two thresholds. Four ways to begin:</source>
        <translation>Jede Sekunde jedes Laufs wird gegen deine eigenen zwei Schwellen als locker, mittel oder hart beurteilt. Vier Wege zu beginnen:</translation>
    </message>
    <message>
        <source>Example season</source>
        <translation>Beispielsaison</translation>
    </message>
    <message>
        <source>FIT, TCX or GPX files from a watch or an older program. Drop them anywhere on this window. They are copied; the originals are not touched.</source>
        <translation>FIT-, TCX- oder GPX-Dateien von einer Uhr oder einem älteren Programm. Lege sie irgendwo auf diesem Fenster ab. Sie werden kopiert; die Originale bleiben unberührt.</translation>
    </message>
    <message>
        <source>FIT, TCX, GPX, CSV, zip or a typed log, files or a folder; the originals stay as they are</source>
        <translation>FIT, TCX, GPX, CSV, zip oder ein getipptes Tagebuch, Dateien oder ein Ordner; die Originale bleiben, wie sie sind</translation>
    </message>
    <message>
        <source>Fastest</source>
        <translation>Schnellste</translation>
    </message>
    <message>
        <source>Feb</source>
        <translation>Feb</translation>
    </message>
    <message>
        <source>February</source>
        <translation>Februar</translation>
    </message>
    <message>
        <source>Fewer than {n} runs with ten minutes of steady running.</source>
        <translation>Weniger als {n} Läufe mit zehn Minuten gleichmäßigem Laufen.</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>File {name}.</source>
        <translation>Datei {name}.</translation>
    </message>
    <message>
        <source>Files can also be dropped anywhere on this window. Each is copied, kept as it is.</source>
        <translation>Dateien können auch irgendwo auf diesem Fenster abgelegt werden. Jede wird kopiert und bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Files of the last import</source>
        <translation>Dateien des letzten Einlesens</translation>
    </message>
    <message>
        <source>Files read</source>
        <translation>Gelesene Dateien</translation>
    </message>
    <message>
        <source>Find a word</source>
        <translation>Ein Wort suchen</translation>
    </message>
    <message>
        <source>Find causes</source>
        <translation>Ursachen suchen</translation>
    </message>
    <message>
        <source>Find runs by date, words, kind or shade</source>
        <translation>Läufe nach Datum, Wörtern, Art oder Stufe finden</translation>
    </message>
    <message>
        <source>Find them from runs</source>
        <translation>Aus Läufen finden</translation>
    </message>
    <message>
        <source>Find…</source>
        <translation>Suchen…</translation>
    </message>
    <message>
        <source>First day</source>
        <translation>Erster Tag</translation>
    </message>
    <message>
        <source>First day of the plan</source>
        <translation>Erster Tag des Plans</translation>
    </message>
    <message>
        <source>First rows of the table</source>
        <translation>Erste Zeilen der Tabelle</translation>
    </message>
    <message>
        <source>First week</source>
        <translation>Erste Woche</translation>
    </message>
    <message>
        <source>Flatter rows</source>
        <translation>Flachere Zeilen</translation>
    </message>
    <message>
        <source>Follow the system</source>
        <translation>Wie das System</translation>
    </message>
    <message>
        <source>For a kilometre or a mile?</source>
        <translation>Für einen Kilometer oder eine Meile?</translation>
    </message>
    <message>
        <source>For printing in black</source>
        <translation>Für Druck in Schwarz</translation>
    </message>
    <message>
        <source>For the repetition, the kilometre or the mile?</source>
        <translation>Für die Wiederholung, den Kilometer oder die Meile?</translation>
    </message>
    <message>
        <source>Forget home</source>
        <translation>Zuhause vergessen</translation>
    </message>
    <message>
        <source>Forget the zone round home</source>
        <translation>Umkreis ums Zuhause vergessen</translation>
    </message>
    <message>
        <source>Four fifths easy: common practice, seen in elite runners (Seiler 2010; Haugen 2022).</source>
        <translation>Vier Fünftel locker: übliche Praxis, bei Spitzenläufern gesehen (Seiler 2010; Haugen 2022).</translation>
    </message>
    <message>
        <source>Fri</source>
        <translation>Fr</translation>
    </message>
    <message>
        <source>Friday</source>
        <translation>Freitag</translation>
    </message>
    <message>
        <source>From</source>
        <comment>first day of a block</comment>
        <translation>Vom</translation>
    </message>
    <message>
        <source>From now on “{typed}” means {reading}</source>
        <translation>Ab jetzt heißt „{typed}“ {reading}</translation>
    </message>
    <message>
        <source>From now on “{typed}” says nothing of how hard it was</source>
        <translation>Ab jetzt sagt „{typed}“ nichts darüber, wie hart es war</translation>
    </message>
    <message>
        <source>From recordings</source>
        <translation>Aus Aufzeichnungen</translation>
    </message>
    <message>
        <source>From {efforts}, level ground. LT2 is put midway between the maximal lactate steady state and critical speed; LT1 at a published share of it, which is the rougher of the two.</source>
        <translation>Aus {efforts}, ebener Boden. LT2 liegt in der Mitte zwischen dem maximalen Laktat-Steady-State und der kritischen Geschwindigkeit; LT1 bei einem veröffentlichten Anteil davon, was der gröbere der beiden Werte ist.</translation>
    </message>
    <message>
        <source>From: {source}.</source>
        <translation>Aus: {source}.</translation>
    </message>
    <message>
        <source>Further places that could not be read: {n}.</source>
        <translation>Weitere nicht lesbare Stellen: {n}.</translation>
    </message>
    <message>
        <source>Give 1 to 60 repetitions.</source>
        <translation>1 bis 60 Wiederholungen angeben.</translation>
    </message>
    <message>
        <source>Give a day such as {example}.</source>
        <translation>Gib einen Tag an wie {example}.</translation>
    </message>
    <message>
        <source>Give a length such as 200 m, 1000 m or 3:00.</source>
        <translation>Eine Länge angeben, etwa 200 m, 1000 m oder 3:00.</translation>
    </message>
    <message>
        <source>Give a pace such as {pace}.</source>
        <translation>Ein Tempo angeben, etwa {pace}.</translation>
    </message>
    <message>
        <source>Give a recovery such as 1:00 jog, walk or stand.</source>
        <translation>Eine Pause angeben, etwa 1:00 jog (traben), walk (gehen) oder stand (stehen).</translation>
    </message>
    <message>
        <source>Give a set of less than 4 hours.</source>
        <translation>Eine Serie unter 4 Stunden angeben.</translation>
    </message>
    <message>
        <source>Give a time such as 1:24:00 or 38:30.</source>
        <translation>Eine Zeit angeben, etwa 1:24:00 oder 38:30.</translation>
    </message>
    <message>
        <source>Give each day a line of its own.</source>
        <translation>Gib jedem Tag eine eigene Zeile.</translation>
    </message>
    <message>
        <source>Give every step its length, or none: 4 for minutes, or 3:30.</source>
        <translation>Gib jeder Stufe ihre Länge oder keiner: 4 für Minuten, oder 3:30.</translation>
    </message>
    <message>
        <source>Give hours, such as 6:20.</source>
        <translation>Stunden angeben, etwa 6:20.</translation>
    </message>
    <message>
        <source>Give kilometres, such as 62.5.</source>
        <translation>Kilometer angeben, etwa 62.5.</translation>
    </message>
    <message>
        <source>Give miles, such as 38.5.</source>
        <translation>Meilen angeben, etwa 38.5.</translation>
    </message>
    <message>
        <source>Give the highest heart rate, such as 186, or an age, such as 42.</source>
        <translation>Die höchste Herzfrequenz angeben, etwa 186, oder ein Alter, etwa 42.</translation>
    </message>
    <message>
        <source>Glossary</source>
        <translation>Wörterverzeichnis</translation>
    </message>
    <message>
        <source>Go by the place</source>
        <translation>Nach dem Ort gehen</translation>
    </message>
    <message>
        <source>Go to today</source>
        <translation>Zu heute</translation>
    </message>
    <message>
        <source>Goal time</source>
        <translation>Zielzeit</translation>
    </message>
    <message>
        <source>Goal time, such as 1:24:00</source>
        <translation>Zielzeit, etwa 1:24:00</translation>
    </message>
    <message>
        <source>Grows at most, per cent a week</source>
        <translation>Wächst höchstens, Prozent je Woche</translation>
    </message>
    <message>
        <source>Half an hour alone</source>
        <translation>Eine halbe Stunde allein</translation>
    </message>
    <message>
        <source>Half as long</source>
        <translation>Halb so lang</translation>
    </message>
    <message>
        <source>Half marathon</source>
        <translation>Halbmarathon</translation>
    </message>
    <message>
        <source>Hand over this record</source>
        <translation>Diese Akte weitergeben</translation>
    </message>
    <message>
        <source>Hand over this record…</source>
        <translation>Diese Akte weitergeben…</translation>
    </message>
    <message>
        <source>Hard</source>
        <translation>Hart</translation>
    </message>
    <message>
        <source>Hard about {time}</source>
        <translation>Hart etwa {time}</translation>
    </message>
    <message>
        <source>Hard begins at about {pace} ({ends}), by heart rate over LT2.</source>
        <translation>Hart beginnt bei etwa {pace} ({ends}), nach Herzfrequenz über LT2.</translation>
    </message>
    <message>
        <source>Hard days apart: {before} to {after}</source>
        <translation>Abstand harter Tage: {before} zu {after}</translation>
    </message>
    <message>
        <source>Hard days at least {n} days apart.</source>
        <translation>Harte Tage mindestens {n} Tage auseinander.</translation>
    </message>
    <message>
        <source>Hard under {time}</source>
        <translation>Hart unter {time}</translation>
    </message>
    <message>
        <source>Hard used up this week.</source>
        <translation>Hartes ist für diese Woche verbraucht.</translation>
    </message>
    <message>
        <source>Hard {amount} over this week.</source>
        <translation>Hart diese Woche {amount} darüber.</translation>
    </message>
    <message>
        <source>Hard {amount} over.</source>
        <translation>Hart {amount} darüber.</translation>
    </message>
    <message>
        <source>Hard {share}</source>
        <translation>Hart {share}</translation>
    </message>
    <message>
        <source>Hard {time}</source>
        <translation>Hart {time}</translation>
    </message>
    <message>
        <source>Hard: {before} to {after}</source>
        <translation>Hart: {before} zu {after}</translation>
    </message>
    <message>
        <source>Heart rate</source>
        <translation>Herzfrequenz</translation>
    </message>
    <message>
        <source>Heart rate drifted</source>
        <translation>Herzfrequenz driftete</translation>
    </message>
    <message>
        <source>Heart rate or age</source>
        <translation>Herzfrequenz oder Alter</translation>
    </message>
    <message>
        <source>Heart rate rose at steady pace</source>
        <translation>Herzfrequenz stieg bei gleichem Tempo</translation>
    </message>
    <message>
        <source>Heart rate through the session, /min</source>
        <translation>Herzfrequenz durch die Einheit, /min</translation>
    </message>
    <message>
        <source>Heart rate through the session, shaded by intensity</source>
        <translation>Herzfrequenz durch die Einheit, nach Intensität eingestuft</translation>
    </message>
    <message>
        <source>Heart rate, /min</source>
        <translation>Herzfrequenz, /min</translation>
    </message>
    <message>
        <source>Heart rates: Fewer than {n} runs with ten minutes of steady running.</source>
        <translation>Herzfrequenzen: weniger als {n} Läufe mit zehn Minuten gleichmäßigem Laufen.</translation>
    </message>
    <message>
        <source>Heart rates: there was no steady running near LT2.</source>
        <translation>Herzfrequenzen: nahe LT2 gab es kein gleichmäßiges Laufen.</translation>
    </message>
    <message>
        <source>Hide chart</source>
        <translation>Diagramm ausblenden</translation>
    </message>
    <message>
        <source>Hide this line for this stretch; it comes back if it grows</source>
        <translation>Diese Zeile für diesen Abschnitt ausblenden; sie kommt wieder, wenn sie wächst</translation>
    </message>
    <message>
        <source>Highest heart rate</source>
        <translation>Höchste Herzfrequenz</translation>
    </message>
    <message>
        <source>Highest heart rate ever seen</source>
        <translation>Höchste je gesehene Herzfrequenz</translation>
    </message>
    <message>
        <source>Highest heart rate or age</source>
        <translation>Höchste Herzfrequenz oder Alter</translation>
    </message>
    <message>
        <source>Highest {beats}</source>
        <translation>Höchste {beats}</translation>
    </message>
    <message>
        <source>Hiking</source>
        <translation>Wandern</translation>
    </message>
    <message>
        <source>History of thresholds</source>
        <translation>Verlauf der Schwellen</translation>
    </message>
    <message>
        <source>History of thresholds as a table</source>
        <translation>Verlauf der Schwellen als Tabelle</translation>
    </message>
    <message>
        <source>Home is forgotten. Until Tercet is closed, Undo in the menu brings it back.</source>
        <translation>Das Zuhause ist vergessen. Bis Tercet geschlossen wird, holt „Rückgängig“ im Menü es zurück.</translation>
    </message>
    <message>
        <source>Home, latitude and longitude in degrees</source>
        <translation>Zuhause, Breite und Länge in Grad</translation>
    </message>
    <message>
        <source>Hours by week, the longest run of each as a bar, the plan as a rule.</source>
        <translation>Stunden je Woche, der längste Lauf jeder Woche als Balken, der Plan als Strich.</translation>
    </message>
    <message>
        <source>Hours by week, the longest run of each as a bar.</source>
        <translation>Stunden je Woche, der längste Lauf jeder Woche als Balken.</translation>
    </message>
    <message>
        <source>Hours or minutes?</source>
        <translation>Stunden oder Minuten?</translation>
    </message>
    <message>
        <source>Hours run</source>
        <translation>Stunden gelaufen</translation>
    </message>
    <message>
        <source>Hours, easy up, moderate and hard down, dashed: easy asked for. Sessions count whole by their work, so their shares differ.</source>
        <translation>Stunden, Lockeres nach oben, Mittleres und Hartes nach unten, gestrichelt: verlangtes Lockeres. Einheiten zählen ganz nach ihrer Belastung, darum weichen ihre Anteile ab.</translation>
    </message>
    <message>
        <source>Hours: {before} to {after}</source>
        <translation>Stunden: {before} zu {after}</translation>
    </message>
    <message>
        <source>How a session is drawn: easy low, moderate in the middle, hard at full height, as long as it lasted.</source>
        <translation>Wie eine Einheit gezeichnet wird: locker niedrig, mittel halbhoch, hart in voller Höhe, so lang wie sie dauerte.</translation>
    </message>
    <message>
        <source>How far it is</source>
        <translation>Wie weit es ist</translation>
    </message>
    <message>
        <source>How far the zone reaches</source>
        <translation>Wie weit der Umkreis reicht</translation>
    </message>
    <message>
        <source>How hard the whole session felt: 0 rest, 10 the most there is</source>
        <translation>Wie hart sich die ganze Einheit anfühlte: 0 Ruhe, 10 das Höchste</translation>
    </message>
    <message>
        <source>How hard was &quot;on&quot;?</source>
        <translation>Wie hart war „on“?</translation>
    </message>
    <message>
        <source>How hard was it, from 0 to 10</source>
        <translation>Wie hart war es, von 0 bis 10</translation>
    </message>
    <message>
        <source>How it felt, the ground, the wind</source>
        <translation>Wie es sich anfühlte, der Boden, der Wind</translation>
    </message>
    <message>
        <source>How long it took is not known: its distance counts, its time does not.</source>
        <translation>Wie lange es dauerte, ist nicht bekannt: die Strecke zählt, die Zeit nicht.</translation>
    </message>
    <message>
        <source>How long?</source>
        <translation>Wie lange?</translation>
    </message>
    <message>
        <source>How much of the stretch before it?</source>
        <translation>Wie viel vom Abschnitt davor?</translation>
    </message>
    <message>
        <source>How much slower would have been easy is not known here.</source>
        <translation>Wie viel langsamer locker gewesen wäre, ist hier nicht bekannt.</translation>
    </message>
    <message>
        <source>How should this be read?</source>
        <translation>Wie soll das gelesen werden?</translation>
    </message>
    <message>
        <source>Import running</source>
        <translation>Einlesen läuft</translation>
    </message>
    <message>
        <source>In 9 of 10 cases {shades}.</source>
        <translation>In 9 von 10 Fällen {shades}.</translation>
    </message>
    <message>
        <source>In force from</source>
        <translation>Gültig ab</translation>
    </message>
    <message>
        <source>In force today</source>
        <translation>Heute gültig</translation>
    </message>
    <message>
        <source>In the coach&apos;s own words.</source>
        <translation>In den eigenen Worten des Trainers.</translation>
    </message>
    <message>
        <source>In {before} and {after} sessions.</source>
        <translation>In {before} und {after} Einheiten.</translation>
    </message>
    <message>
        <source>In {n} sessions both times.</source>
        <translation>Beide Male in {n} Einheiten.</translation>
    </message>
    <message>
        <source>Intensity curve</source>
        <translation>Intensitätskurve</translation>
    </message>
    <message>
        <source>Interval, 9 of 10 cases</source>
        <translation>Spanne, 9 von 10 Fällen</translation>
    </message>
    <message>
        <source>Is there a race of that length?</source>
        <translation>Gibt es ein Rennen dieser Länge?</translation>
    </message>
    <message>
        <source>It begins like XML, but is too damaged to tell what it is.</source>
        <translation>Sie beginnt wie XML, ist aber zu beschädigt, um zu sagen, was sie ist.</translation>
    </message>
    <message>
        <source>It cannot be read again: {reason}.</source>
        <translation>Nicht noch einmal lesbar: {reason}.</translation>
    </message>
    <message>
        <source>It cannot be read: {reason}.</source>
        <translation>Nicht lesbar: {reason}.</translation>
    </message>
    <message>
        <source>It cannot be read: {why}.</source>
        <translation>Nicht lesbar: {why}.</translation>
    </message>
    <message>
        <source>It changed while it was read; add it again.</source>
        <translation>Sie änderte sich beim Lesen; füge sie noch einmal hinzu.</translation>
    </message>
    <message>
        <source>It could not be understood ({kind}: {error}).</source>
        <translation>Sie war nicht zu verstehen ({kind}: {error}).</translation>
    </message>
    <message>
        <source>It declares a document type or entities, as no recording does.</source>
        <translation>Sie erklärt einen Dokumenttyp oder Entitäten, wie es keine Aufzeichnung tut.</translation>
    </message>
    <message>
        <source>It does not begin with a FIT header.</source>
        <translation>Sie beginnt nicht mit einem FIT-Kopf.</translation>
    </message>
    <message>
        <source>It has more than {most} lines.</source>
        <translation>Sie hat mehr als {most} Zeilen.</translation>
    </message>
    <message>
        <source>It holds a course to follow, no activity.</source>
        <translation>Sie enthält eine Strecke zum Nachlaufen, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds a course to follow: not a recorded run.</source>
        <translation>Sie enthält eine Strecke zum Nachlaufen: kein aufgezeichneter Lauf.</translation>
    </message>
    <message>
        <source>It holds a description of a device, no activity.</source>
        <translation>Sie enthält die Beschreibung eines Geräts, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds a list of segments, no activity.</source>
        <translation>Sie enthält eine Liste von Teilstrecken, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds a planned workout, no activity.</source>
        <translation>Sie enthält eine geplante Einheit, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds a schedule, no activity.</source>
        <translation>Sie enthält einen Zeitplan, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds a segment, no activity.</source>
        <translation>Sie enthält eine Teilstrecke, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds all-day monitoring, no activity.</source>
        <translation>Sie enthält Werte des ganzen Tages, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds blood pressures, no activity.</source>
        <translation>Sie enthält Blutdruckwerte, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds goals, no activity.</source>
        <translation>Sie enthält Ziele, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds more than {most} files.</source>
        <translation>Sie enthält mehr als {most} Dateien.</translation>
    </message>
    <message>
        <source>It holds more than {most} laps.</source>
        <translation>Sie enthält mehr als {most} Runden.</translation>
    </message>
    <message>
        <source>It holds more than {most} points.</source>
        <translation>Sie enthält mehr als {most} Punkte.</translation>
    </message>
    <message>
        <source>It holds more than {most} samples.</source>
        <translation>Sie enthält mehr als {most} Messwerte.</translation>
    </message>
    <message>
        <source>It holds no activity.</source>
        <translation>Sie enthält keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds no place.</source>
        <translation>Es enthält keinen Ort.</translation>
    </message>
    <message>
        <source>It holds no sample that could be read.</source>
        <translation>Sie enthält keinen lesbaren Messwert.</translation>
    </message>
    <message>
        <source>It holds no samples.</source>
        <translation>Sie enthält keine Messwerte.</translation>
    </message>
    <message>
        <source>It holds no track, at most sums: not a recorded run.</source>
        <translation>Sie enthält keine Spur, höchstens Summen: kein aufgezeichneter Lauf.</translation>
    </message>
    <message>
        <source>It holds no track.</source>
        <translation>Sie enthält keine Spur.</translation>
    </message>
    <message>
        <source>It holds no track: at most a route or places, not a run.</source>
        <translation>Sie enthält keine Spur: höchstens eine Route oder Orte, keinen Lauf.</translation>
    </message>
    <message>
        <source>It holds settings of a device, no activity.</source>
        <translation>Sie enthält Einstellungen eines Geräts, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds settings of a sport, no activity.</source>
        <translation>Sie enthält Einstellungen einer Sportart, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds totals, no activity.</source>
        <translation>Sie enthält Summen, keine Aktivität.</translation>
    </message>
    <message>
        <source>It holds weights, no activity.</source>
        <translation>Sie enthält Gewichte, keine Aktivität.</translation>
    </message>
    <message>
        <source>It is a diary, but names no year. Write the year in its first line, such as &quot;2026&quot; or &quot;Week of Mon 2026-06-08&quot;.</source>
        <translation>Es ist ein Tagebuch ohne Jahr. Schreibe das Jahr in die erste Zeile, etwa „2026“ oder „Week of Mon 2026-06-08“.</translation>
    </message>
    <message>
        <source>It is a route, not a run: none of its {n} points carries a time.</source>
        <translation>Es ist eine Route, kein Lauf: keiner der {n} Punkte trägt eine Zeit.</translation>
    </message>
    <message>
        <source>It is a zip file, but not a runner&apos;s record.</source>
        <translation>Das ist eine zip-Datei, aber keine Akte eines Läufers.</translation>
    </message>
    <message>
        <source>It is cut short: it ends after {bytes} bytes, {announced} were announced.</source>
        <translation>Sie ist abgeschnitten: sie endet nach {bytes} Bytes, angekündigt waren {announced}.</translation>
    </message>
    <message>
        <source>It is cut short: it ends within &lt;{element}&gt;, at line {line}.</source>
        <translation>Sie ist abgeschnitten: sie endet in &lt;{element}&gt;, in Zeile {line}.</translation>
    </message>
    <message>
        <source>It is cut short: it ends within its first lines, at line {line}.</source>
        <translation>Sie ist abgeschnitten: sie endet in den ersten Zeilen, in Zeile {line}.</translation>
    </message>
    <message>
        <source>It is damaged at line {line}, column {column}; the rest was not read.</source>
        <translation>Sie ist in Zeile {line}, Spalte {column} beschädigt; der Rest wurde nicht gelesen.</translation>
    </message>
    <message>
        <source>It is larger than {mb} MB.</source>
        <translation>Sie ist größer als {mb} MB.</translation>
    </message>
    <message>
        <source>It is larger than {size} MB.</source>
        <translation>Sie ist größer als {size} MB.</translation>
    </message>
    <message>
        <source>It is locked by a password; unpack it first.</source>
        <translation>Sie ist durch ein Passwort gesperrt; zuerst auspacken.</translation>
    </message>
    <message>
        <source>It is no calendar by RFC 5545.</source>
        <translation>Das ist kein Kalender nach RFC 5545.</translation>
    </message>
    <message>
        <source>It is no plain text, or longer than a diary: 1 MB at most.</source>
        <translation>Das ist kein reiner Text oder länger als ein Tagebuch: höchstens 1 MB.</translation>
    </message>
    <message>
        <source>It is written in an encoding that is not known here.</source>
        <translation>Sie ist in einer hier unbekannten Kodierung geschrieben.</translation>
    </message>
    <message>
        <source>It needs steady easy running with heart rate.</source>
        <translation>Dazu braucht es gleichmäßiges lockeres Laufen mit Herzfrequenz.</translation>
    </message>
    <message>
        <source>It was last open in another version. Open this runner once.</source>
        <translation>Zuletzt in einer anderen Version geöffnet. Öffne diesen Läufer einmal.</translation>
    </message>
    <message>
        <source>It was meant.</source>
        <translation>Es war beabsichtigt.</translation>
    </message>
    <message>
        <source>It was never finished: its length was not written.</source>
        <translation>Sie wurde nie abgeschlossen: ihre Länge wurde nicht geschrieben.</translation>
    </message>
    <message>
        <source>It was read but could not be judged ({reason}).</source>
        <translation>Gelesen, aber nicht zu beurteilen ({reason}).</translation>
    </message>
    <message>
        <source>It was written by a newer version of Tercet. Use that version.</source>
        <translation>Von einer neueren Version von Tercet geschrieben. Verwende jene Version.</translation>
    </message>
    <message>
        <source>It was {reading}</source>
        <translation>Es war {reading}</translation>
    </message>
    <message>
        <source>Its check sum is wrong: values may have changed.</source>
        <translation>Ihre Prüfsumme stimmt nicht: Werte können sich geändert haben.</translation>
    </message>
    <message>
        <source>Its clock was not set</source>
        <translation>Ihre Uhr war nicht gestellt</translation>
    </message>
    <message>
        <source>Its elements are nested more than {most} deep.</source>
        <translation>Ihre Elemente sind tiefer als {most} verschachtelt.</translation>
    </message>
    <message>
        <source>Its first row has {n} columns without names.</source>
        <translation>Ihre erste Zeile hat {n} Spalten ohne Namen.</translation>
    </message>
    <message>
        <source>Its first sheet holds no table.</source>
        <translation>Ihr erstes Blatt enthält keine Tabelle.</translation>
    </message>
    <message>
        <source>Its first sheet spans more than {most} cells.</source>
        <translation>Ihr erstes Blatt umfasst mehr als {most} Zellen.</translation>
    </message>
    <message>
        <source>Its samples carry no day: when did the run start?</source>
        <translation>Die Messwerte tragen keinen Tag: wann begann der Lauf?</translation>
    </message>
    <message>
        <source>Its times lie before 1970 or after 2126.</source>
        <translation>Die Zeiten liegen vor 1970 oder nach 2126.</translation>
    </message>
    <message>
        <source>Jan</source>
        <translation>Jan</translation>
    </message>
    <message>
        <source>January</source>
        <translation>Januar</translation>
    </message>
    <message>
        <source>Join the two</source>
        <translation>Beide verbinden</translation>
    </message>
    <message>
        <source>Join two sessions</source>
        <translation>Zwei Einheiten verbinden</translation>
    </message>
    <message>
        <source>Join with the next block</source>
        <translation>Mit dem nächsten Block verbinden</translation>
    </message>
    <message>
        <source>Join {first} and {second}</source>
        <translation>{first} und {second} verbinden</translation>
    </message>
    <message>
        <source>Judge all runs again</source>
        <translation>Alle Läufe neu beurteilen</translation>
    </message>
    <message>
        <source>Judge anew</source>
        <translation>Neu beurteilen</translation>
    </message>
    <message>
        <source>Judging {done} of {whole}</source>
        <translation>Beurteilt {done} von {whole}</translation>
    </message>
    <message>
        <source>Judging…</source>
        <translation>Wird beurteilt…</translation>
    </message>
    <message>
        <source>Jul</source>
        <translation>Jul</translation>
    </message>
    <message>
        <source>July</source>
        <translation>Juli</translation>
    </message>
    <message>
        <source>Jun</source>
        <translation>Jun</translation>
    </message>
    <message>
        <source>June</source>
        <translation>Juni</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Keep a test</source>
        <translation>Test behalten</translation>
    </message>
    <message>
        <source>Keep as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
    <message>
        <source>Keep at least {wanted} of the running easy.</source>
        <translation>Halte mindestens {wanted} des Laufens locker.</translation>
    </message>
    <message>
        <source>Keep easy runs slower than about {pace}</source>
        <translation>Lockere Läufe langsamer als etwa {pace} halten</translation>
    </message>
    <message>
        <source>Keep the fast running in short repetitions with easy days between.</source>
        <translation>Halte das schnelle Laufen in kurzen Wiederholungen mit lockeren Tagen dazwischen.</translation>
    </message>
    <message>
        <source>Keep the race only</source>
        <translation>Nur das Rennen behalten</translation>
    </message>
    <message>
        <source>Keep the rest</source>
        <translation>Den Rest behalten</translation>
    </message>
    <message>
        <source>Keep the runs</source>
        <translation>Läufe behalten</translation>
    </message>
    <message>
        <source>Keep this copy&apos;s word</source>
        <translation>Wort dieser Kopie behalten</translation>
    </message>
    <message>
        <source>Keep what is here</source>
        <translation>Hiesiges behalten</translation>
    </message>
    <message>
        <source>Keep {n} run</source>
        <translation>{n} Lauf behalten</translation>
    </message>
    <message>
        <source>Keep {n} run from paper</source>
        <translation>{n} Lauf vom Papier behalten</translation>
    </message>
    <message>
        <source>Keep {n} runs</source>
        <translation>{n} Läufe behalten</translation>
    </message>
    <message>
        <source>Keep {n} runs from paper</source>
        <translation>{n} Läufe vom Papier behalten</translation>
    </message>
    <message>
        <source>Kept, and not counted as running. If it is to count, say under Kind that it was a run.</source>
        <translation>Aufbewahrt, nicht als Laufen gezählt. Soll es zählen, dann sag unter Art, dass es ein Lauf war.</translation>
    </message>
    <message>
        <source>Key</source>
        <translation>Legende</translation>
    </message>
    <message>
        <source>Kilometres</source>
        <translation>Kilometer</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Kind of block</source>
        <translation>Art des Blocks</translation>
    </message>
    <message>
        <source>Kind of session: {kind}</source>
        <translation>Art der Einheit: {kind}</translation>
    </message>
    <message>
        <source>Kind of the session</source>
        <translation>Art der Einheit</translation>
    </message>
    <message>
        <source>Kind of {n} sessions</source>
        <translation>Art von {n} Einheiten</translation>
    </message>
    <message>
        <source>LT1 /min</source>
        <translation>LT1 /min</translation>
    </message>
    <message>
        <source>LT1 heart rate</source>
        <translation>LT1 Herzfrequenz</translation>
    </message>
    <message>
        <source>LT1 must be slower than LT2: {lt1} and {lt2}. Choose others.</source>
        <translation>LT1 muss langsamer sein als LT2: {lt1} und {lt2}. Wähle andere.</translation>
    </message>
    <message>
        <source>LT1 must be slower than LT2: {lt1} and {lt2}. Right would be 5:20 and 4:30.</source>
        <translation>LT1 muss langsamer sein als LT2: {lt1} und {lt2}. Richtig wäre 5:20 und 4:30.</translation>
    </message>
    <message>
        <source>LT1 pace</source>
        <translation>LT1 Tempo</translation>
    </message>
    <message>
        <source>LT1 power</source>
        <translation>LT1 Leistung</translation>
    </message>
    <message>
        <source>LT1, LT2</source>
        <translation>LT1, LT2</translation>
    </message>
    <message>
        <source>LT2 /min</source>
        <translation>LT2 /min</translation>
    </message>
    <message>
        <source>LT2 heart rate</source>
        <translation>LT2 Herzfrequenz</translation>
    </message>
    <message>
        <source>LT2 pace</source>
        <translation>LT2 Tempo</translation>
    </message>
    <message>
        <source>LT2 power</source>
        <translation>LT2 Leistung</translation>
    </message>
    <message>
        <source>LT2 stayed at {pace}</source>
        <translation>LT2 blieb bei {pace}</translation>
    </message>
    <message>
        <source>LT2 stood at {pace}</source>
        <translation>LT2 stand bei {pace}</translation>
    </message>
    <message>
        <source>LT2 went from {first} to {last}</source>
        <translation>LT2 ging von {first} auf {last}</translation>
    </message>
    <message>
        <source>Lactate at rest, if taken</source>
        <translation>Ruhelaktat, falls gemessen</translation>
    </message>
    <message>
        <source>Lactate curve with candidates for LT1 and LT2</source>
        <translation>Laktatkurve mit Kandidaten für LT1 und LT2</translation>
    </message>
    <message>
        <source>Lactate step test</source>
        <translation>Laktat-Stufentest</translation>
    </message>
    <message>
        <source>Last day</source>
        <translation>Letzter Tag</translation>
    </message>
    <message>
        <source>Last import</source>
        <translation>Letztes Einlesen</translation>
    </message>
    <message>
        <source>Last import {when}</source>
        <translation>Letztes Einlesen {when}</translation>
    </message>
    <message>
        <source>Last import {when}, {n} need a look</source>
        <translation>Letztes Einlesen {when}, {n} bitte ansehen</translation>
    </message>
    <message>
        <source>Last import {when}, {n} needs a look</source>
        <translation>Letztes Einlesen {when}, {n} bitte ansehen</translation>
    </message>
    <message>
        <source>Last review, {name}, day not kept</source>
        <translation>Letzter Rückblick, {name}, Tag nicht aufbewahrt</translation>
    </message>
    <message>
        <source>Last review, {name}, written {day}</source>
        <translation>Letzter Rückblick, {name}, geschrieben {day}</translation>
    </message>
    <message>
        <source>Last: {first} and {second}. Full recovery after hard work is put at 48 h or more, longer for many over 40.</source>
        <translation>Zuletzt: {first} und {second}. Volle Erholung nach harter Belastung wird mit 48 h oder mehr angegeben, länger für viele über 40.</translation>
    </message>
    <message>
        <source>Lay out the season</source>
        <translation>Saison auslegen</translation>
    </message>
    <message>
        <source>Leave all of it out</source>
        <translation>Alles davon weglassen</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>So lassen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
    <message>
        <source>Leave it as it was</source>
        <translation>Lassen, wie es war</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>Weglassen</translation>
    </message>
    <message>
        <source>Leave it: {why}</source>
        <translation>So lassen: {why}</translation>
    </message>
    <message>
        <source>Leave out the run</source>
        <translation>Lauf weglassen</translation>
    </message>
    <message>
        <source>Leave out {page}</source>
        <translation>{page} weglassen</translation>
    </message>
    <message>
        <source>Leave out {stretch}</source>
        <translation>{stretch} weglassen</translation>
    </message>
    <message>
        <source>Leave the tour</source>
        <translation>Rundblick verlassen</translation>
    </message>
    <message>
        <source>Leave them</source>
        <translation>So lassen</translation>
    </message>
    <message>
        <source>Leave this page out</source>
        <translation>Diese Seite weglassen</translation>
    </message>
    <message>
        <source>Leave “{typed}” out</source>
        <translation>„{typed}“ weglassen</translation>
    </message>
    <message>
        <source>Left out</source>
        <translation>Weggelassen</translation>
    </message>
    <message>
        <source>Left season</source>
        <translation>Linke Saison</translation>
    </message>
    <message>
        <source>Left set</source>
        <translation>Linke Serie</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Letter across</source>
        <translation>Letter quer</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Line {number}</source>
        <translation>Zeile {number}</translation>
    </message>
    <message>
        <source>Line {number}, “{typed}”: {question}</source>
        <translation>Zeile {number}, „{typed}“: {question}</translation>
    </message>
    <message>
        <source>Lines for the next block</source>
        <translation>Zeilen für den nächsten Block</translation>
    </message>
    <message>
        <source>Load is effort (CR-10) times minutes; monotony its mean over its spread by day, strain their product (Foster 1998). A dash: an effort was not said.</source>
        <translation>Belastung ist Anstrengung (CR-10) mal Minuten; Monotonie ihr Tagesmittel durch ihre Streuung, Beanspruchung deren Produkt (Foster 1998). Ein Strich: eine Anstrengung fehlt.</translation>
    </message>
    <message>
        <source>Longest run</source>
        <translation>Längster Lauf</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>Look into these runs</source>
        <translation>Diese Läufe ansehen</translation>
    </message>
    <message>
        <source>Looked at: the last {days} days.</source>
        <translation>Angesehen: die letzten {days} Tage.</translation>
    </message>
    <message>
        <source>Looked at: {n} run of the last {days} days.</source>
        <translation>Angesehen: {n} Lauf der letzten {days} Tage.</translation>
    </message>
    <message>
        <source>Looked at: {n} runs of the last {days} days.</source>
        <translation>Angesehen: {n} Läufe der letzten {days} Tage.</translation>
    </message>
    <message>
        <source>Looking ahead and back</source>
        <translation>Voraus und zurück</translation>
    </message>
    <message>
        <source>Looking for files</source>
        <translation>Sucht Dateien</translation>
    </message>
    <message>
        <source>Make a block here</source>
        <translation>Hier einen Block anlegen</translation>
    </message>
    <message>
        <source>Make a stretch a repetition</source>
        <translation>Abschnitt zur Wiederholung machen</translation>
    </message>
    <message>
        <source>Make {stretch} a repetition</source>
        <translation>{stretch} zur Wiederholung machen</translation>
    </message>
    <message>
        <source>Mar</source>
        <translation>Mär</translation>
    </message>
    <message>
        <source>Marathon</source>
        <translation>Marathon</translation>
    </message>
    <message>
        <source>March</source>
        <translation>März</translation>
    </message>
    <message>
        <source>May</source>
        <translation>Mai</translation>
    </message>
    <message>
        <source>Means</source>
        <translation>Bedeutet</translation>
    </message>
    <message>
        <source>Meant</source>
        <translation>Beabsichtigt</translation>
    </message>
    <message>
        <source>Meant, so not counted against the block</source>
        <translation>Beabsichtigt, also nicht gegen den Block gezählt</translation>
    </message>
    <message>
        <source>Median days between two hard ones. Set for this runner: {n} or more.</source>
        <translation>Mittlere Tage zwischen zwei harten (Median). Für diesen Läufer gesetzt: {n} oder mehr.</translation>
    </message>
    <message>
        <source>Menu</source>
        <translation>Menü</translation>
    </message>
    <message>
        <source>Miles</source>
        <translation>Meilen</translation>
    </message>
    <message>
        <source>Minutes or metres?</source>
        <translation>Minuten oder Meter?</translation>
    </message>
    <message>
        <source>Moderate</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>Moderate about {time}</source>
        <translation>Mittel etwa {time}</translation>
    </message>
    <message>
        <source>Moderate time by cause, hours and minutes. What was meant is no fault.</source>
        <translation>Mittlere Zeit nach Ursache, Stunden und Minuten. Beabsichtigtes ist kein Fehler.</translation>
    </message>
    <message>
        <source>Moderate under {time}</source>
        <translation>Mittel unter {time}</translation>
    </message>
    <message>
        <source>Moderate used up.</source>
        <translation>Mittleres ist verbraucht.</translation>
    </message>
    <message>
        <source>Moderate {amount} over.</source>
        <translation>Mittel {amount} darüber.</translation>
    </message>
    <message>
        <source>Moderate {moderate} over and hard {hard} over.</source>
        <translation>Mittel {moderate} und hart {hard} darüber.</translation>
    </message>
    <message>
        <source>Moderate {share}</source>
        <translation>Mittel {share}</translation>
    </message>
    <message>
        <source>Moderate {time}</source>
        <translation>Mittel {time}</translation>
    </message>
    <message>
        <source>Mon</source>
        <translation>Mo</translation>
    </message>
    <message>
        <source>Monday</source>
        <translation>Montag</translation>
    </message>
    <message>
        <source>More than a day&apos;s running: is that right?</source>
        <translation>Mehr als ein Tag Laufen: stimmt das?</translation>
    </message>
    <message>
        <source>More than {most} characters: what is it?</source>
        <translation>Mehr als {most} Zeichen: was ist das?</translation>
    </message>
    <message>
        <source>More than {most} repetitions: is that right?</source>
        <translation>Mehr als {most} Wiederholungen: stimmt das?</translation>
    </message>
    <message>
        <source>Most of it: {cause}, {time}.</source>
        <translation>Das meiste davon: {cause}, {time}.</translation>
    </message>
    <message>
        <source>Move a page</source>
        <translation>Seite verschieben</translation>
    </message>
    <message>
        <source>Move a planned session</source>
        <translation>Geplante Einheit verschieben</translation>
    </message>
    <message>
        <source>Move by days</source>
        <translation>Um Tage verschieben</translation>
    </message>
    <message>
        <source>Move by hours</source>
        <translation>Um Stunden verschieben</translation>
    </message>
    <message>
        <source>Move by minutes</source>
        <translation>Um Minuten verschieben</translation>
    </message>
    <message>
        <source>Move the end of {first}</source>
        <translation>Ende von {first} verschieben</translation>
    </message>
    <message>
        <source>Move the other files without a clock by the same difference</source>
        <translation>Die anderen Dateien ohne Uhr um denselben Unterschied verschieben</translation>
    </message>
    <message>
        <source>Move the starts</source>
        <translation>Startzeiten verschieben</translation>
    </message>
    <message>
        <source>Move {block}</source>
        <translation>{block} verschieben</translation>
    </message>
    <message>
        <source>Moved to {day}</source>
        <translation>Verschoben auf {day}</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Name a column of distances or of times taken.</source>
        <translation>Benenne eine Spalte mit Strecken oder mit Laufzeiten.</translation>
    </message>
    <message>
        <source>Name of the block</source>
        <translation>Name des Blocks</translation>
    </message>
    <message>
        <source>Name of the race</source>
        <translation>Name des Rennens</translation>
    </message>
    <message>
        <source>Name the column that holds the day.</source>
        <translation>Benenne die Spalte mit dem Tag.</translation>
    </message>
    <message>
        <source>Name the column that holds the time of each sample.</source>
        <translation>Benenne die Spalte mit der Zeit jedes Messwerts.</translation>
    </message>
    <message>
        <source>Name the columns</source>
        <translation>Spalten benennen</translation>
    </message>
    <message>
        <source>Name the columns of {file}</source>
        <translation>Spalten von {file} benennen</translation>
    </message>
    <message>
        <source>Name the race and the blocks before it now; the runs find their places later.</source>
        <translation>Benenne jetzt das Rennen und die Blöcke davor; die Läufe finden später ihren Platz.</translation>
    </message>
    <message>
        <source>Needs a look</source>
        <translation>Bitte ansehen</translation>
    </message>
    <message>
        <source>Needs a look  {n}</source>
        <translation>Bitte ansehen  {n}</translation>
    </message>
    <message>
        <source>Never truly hard is the other common fault (common practice). A few short fast repetitions, well rested, are the usual beginning.</source>
        <translation>Nie wirklich hart ist der andere häufige Fehler (übliche Praxis). Einige kurze schnelle Wiederholungen, gut ausgeruht, sind der übliche Anfang.</translation>
    </message>
    <message>
        <source>New</source>
        <translation>Neu</translation>
    </message>
    <message>
        <source>New files in it are taken in by themselves, at the start too</source>
        <translation>Neue Dateien darin werden von selbst eingelesen, auch beim Start</translation>
    </message>
    <message>
        <source>New page</source>
        <translation>Neue Seite</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Nächste</translation>
    </message>
    <message>
        <source>Next block</source>
        <translation>Nächster Block</translation>
    </message>
    <message>
        <source>Next block, one line each</source>
        <translation>Nächster Block, je eine Zeile</translation>
    </message>
    <message>
        <source>Next pane</source>
        <translation>Nächster Bereich</translation>
    </message>
    <message>
        <source>Next runner</source>
        <translation>Nächster Läufer</translation>
    </message>
    <message>
        <source>Next session</source>
        <translation>Nächste Einheit</translation>
    </message>
    <message>
        <source>Next: {block}, from {day}</source>
        <translation>Als Nächstes: {block}, ab {day}</translation>
    </message>
    <message>
        <source>No blocks yet: the sheet goes by months.</source>
        <translation>Noch keine Blöcke: das Blatt geht nach Monaten.</translation>
    </message>
    <message>
        <source>No clock on paper: shaded by a pace that is written, about against LT1 and LT2 of that day, else by the word. Times in italics follow from typical speeds.</source>
        <translation>Papier hat keine Uhr: eingestuft nach einem geschriebenen Tempo, ungefähr gegen LT1 und LT2 jenes Tages, sonst nach dem Wort. Kursive Zeiten folgen aus typischen Geschwindigkeiten.</translation>
    </message>
    <message>
        <source>No clock on paper: shaded by a pace that is written, against LT1 and LT2 of that day, else by the word. Times in italics follow from typical speeds.</source>
        <translation>Papier hat keine Uhr: eingestuft nach einem geschriebenen Tempo, gegen LT1 und LT2 jenes Tages, sonst nach dem Wort. Kursive Zeiten folgen aus typischen Geschwindigkeiten.</translation>
    </message>
    <message>
        <source>No column of days could be told among {names}.</source>
        <translation>Unter {names} war keine Spalte mit Tagen zu erkennen.</translation>
    </message>
    <message>
        <source>No column of distances or of times taken could be told.</source>
        <translation>Keine Spalte mit Strecken oder Laufzeiten war zu erkennen.</translation>
    </message>
    <message>
        <source>No day, left out</source>
        <translation>Kein Tag, weggelassen</translation>
    </message>
    <message>
        <source>No fast repetitions yet. They are found in recordings with three or more of them, and in diaries.</source>
        <translation>Noch keine schnellen Wiederholungen. Sie finden sich in Aufzeichnungen mit drei oder mehr davon und in Tagebüchern.</translation>
    </message>
    <message>
        <source>No field test was recognised in it: neither half an hour at one even speed with easier running before and after, nor one trial of about 3 and one of about 12 minutes.</source>
        <translation>Darin wurde kein Feldtest erkannt: weder eine halbe Stunde mit gleichmäßiger Geschwindigkeit und lockererem Laufen davor und danach noch ein Versuch von etwa 3 und einer von etwa 12 Minuten.</translation>
    </message>
    <message>
        <source>No files were copied. Copy some in a file manager first.</source>
        <translation>Es wurden keine Dateien kopiert. Zuerst einige in einem Dateimanager kopieren.</translation>
    </message>
    <message>
        <source>No folder is watched</source>
        <translation>Kein Ordner wird beobachtet</translation>
    </message>
    <message>
        <source>No hard running is wanted this week.</source>
        <translation>Diese Woche soll nichts Hartes gelaufen werden.</translation>
    </message>
    <message>
        <source>No heart rate at LT1 is in force.</source>
        <translation>Keine Herzfrequenz an LT1 ist gültig.</translation>
    </message>
    <message>
        <source>No line of it is a run with a day.</source>
        <translation>Keine Zeile davon ist ein Lauf mit Tag.</translation>
    </message>
    <message>
        <source>No method found a line for both LT1 and LT2 in it.</source>
        <translation>Keine Methode fand darin eine Linie für LT1 und LT2.</translation>
    </message>
    <message>
        <source>No moderate running in these blocks.</source>
        <translation>Kein mittleres Laufen in diesen Blöcken.</translation>
    </message>
    <message>
        <source>No more hard running than a tenth over the most of the last four weeks.</source>
        <translation>Nicht mehr hartes Laufen als ein Zehntel über dem Höchsten der letzten vier Wochen.</translation>
    </message>
    <message>
        <source>No notes for this page</source>
        <translation>Keine Notizen zu dieser Seite</translation>
    </message>
    <message>
        <source>No notes for this page.</source>
        <translation>Keine Notizen zu dieser Seite.</translation>
    </message>
    <message>
        <source>No original file, no name, note, device, shading, threshold or plan.</source>
        <translation>Keine Originaldatei, kein Name, keine Notiz, kein Gerät, keine Stufe, keine Schwelle und kein Plan.</translation>
    </message>
    <message>
        <source>No point of a track could be read.</source>
        <translation>Kein Punkt einer Spur war lesbar.</translation>
    </message>
    <message>
        <source>No race yet. Races and goals counts a season back from one.</source>
        <translation>Noch kein Rennen. „Rennen und Ziele“ rechnet eine Saison davon zurück.</translation>
    </message>
    <message>
        <source>No races yet.</source>
        <translation>Noch keine Rennen.</translation>
    </message>
    <message>
        <source>No repetitions were found in this session.</source>
        <translation>In dieser Einheit wurden keine Wiederholungen gefunden.</translation>
    </message>
    <message>
        <source>No run could be read: {problem}</source>
        <translation>Kein Lauf war lesbar: {problem}</translation>
    </message>
    <message>
        <source>No season file: {reason}.</source>
        <translation>Keine Saisondatei: {reason}.</translation>
    </message>
    <message>
        <source>No season yet</source>
        <translation>Noch keine Saison</translation>
    </message>
    <message>
        <source>No session on this day</source>
        <translation>Keine Einheit an diesem Tag</translation>
    </message>
    <message>
        <source>No shorthand known yet.</source>
        <translation>Noch keine Kürzel bekannt.</translation>
    </message>
    <message>
        <source>No single run over {most}: the longest of the last four weeks was {longest}.</source>
        <translation>Kein einzelner Lauf über {most}: der längste der letzten vier Wochen war {longest}.</translation>
    </message>
    <message>
        <source>No steady running came near that heart rate.</source>
        <translation>Kein gleichmäßiges Laufen kam dieser Herzfrequenz nahe.</translation>
    </message>
    <message>
        <source>No thresholds yet.</source>
        <translation>Noch keine Schwellen.</translation>
    </message>
    <message>
        <source>No word like this stands here.</source>
        <translation>Ein solches Wort steht hier nicht.</translation>
    </message>
    <message>
        <source>Nobody runs at that pace: what was meant?</source>
        <translation>So schnell läuft niemand: was war gemeint?</translation>
    </message>
    <message>
        <source>None chosen</source>
        <translation>Keine gewählt</translation>
    </message>
    <message>
        <source>None of its {n} samples carries a time.</source>
        <translation>Keiner der {n} Messwerte trägt eine Zeit.</translation>
    </message>
    <message>
        <source>Not counted as running, so not judged.</source>
        <translation>Nicht als Laufen gezählt, also nicht beurteilt.</translation>
    </message>
    <message>
        <source>Not judged</source>
        <translation>Nicht beurteilt</translation>
    </message>
    <message>
        <source>Not judged until you say: {question}</source>
        <translation>Nicht beurteilt, bis du es sagst: {question}</translation>
    </message>
    <message>
        <source>Not judged: there are no thresholds yet.</source>
        <translation>Nicht beurteilt: es gibt noch keine Schwellen.</translation>
    </message>
    <message>
        <source>Not known yet</source>
        <translation>Noch nicht bekannt</translation>
    </message>
    <message>
        <source>Not meant</source>
        <translation>Nicht beabsichtigt</translation>
    </message>
    <message>
        <source>Not read</source>
        <translation>Nicht gelesen</translation>
    </message>
    <message>
        <source>Not recordings by their names: {files}</source>
        <translation>Den Namen nach keine Aufzeichnungen: {files}</translation>
    </message>
    <message>
        <source>Not running</source>
        <translation>Nicht gelaufen</translation>
    </message>
    <message>
        <source>Not saved: {why}</source>
        <translation>Nicht gespeichert: {why}</translation>
    </message>
    <message>
        <source>Not saved: {why}. Choose another folder, or make room on the disk.</source>
        <translation>Nicht gespeichert: {why}. Wähle einen anderen Ordner oder schaffe Platz auf dem Datenträger.</translation>
    </message>
    <message>
        <source>Not understood and not counted: &quot;{text}&quot;. {question}</source>
        <translation>Nicht verstanden und nicht gezählt: „{text}“. {question}</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>Notes for the presenter</source>
        <translation>Notizen für den Vortrag</translation>
    </message>
    <message>
        <source>Nothing after byte {n} could be read.</source>
        <translation>Nach Byte {n} war nichts lesbar.</translation>
    </message>
    <message>
        <source>Nothing at all?</source>
        <translation>Gar nichts?</translation>
    </message>
    <message>
        <source>Nothing else</source>
        <translation>Sonst nichts</translation>
    </message>
    <message>
        <source>Nothing else stands out.</source>
        <translation>Sonst fällt nichts auf.</translation>
    </message>
    <message>
        <source>Nothing hard before {free}, {n} days after {race}: a day for each mile raced (common practice, no source).</source>
        <translation>Nichts Hartes vor dem {free}, {n} Tage nach {race}: ein Tag für jede Meile des Rennens (übliche Praxis, ohne Quelle).</translation>
    </message>
    <message>
        <source>Nothing has been judged in this stretch.</source>
        <translation>In diesem Abschnitt wurde nichts beurteilt.</translation>
    </message>
    <message>
        <source>Nothing has been judged yet. Recordings or a paper log fill this curve.</source>
        <translation>Noch wurde nichts beurteilt. Aufzeichnungen oder ein Papiertagebuch füllen diese Kurve.</translation>
    </message>
    <message>
        <source>Nothing has been run in these blocks yet. Recordings or a paper log fill this page.</source>
        <translation>In diesen Blöcken wurde noch nichts gelaufen. Aufzeichnungen oder ein Papiertagebuch füllen diese Seite.</translation>
    </message>
    <message>
        <source>Nothing has been run in these weeks yet.</source>
        <translation>In diesen Wochen wurde noch nichts gelaufen.</translation>
    </message>
    <message>
        <source>Nothing has been run in this season yet. Recordings or a paper log fill this chart.</source>
        <translation>In dieser Saison wurde noch nichts gelaufen. Aufzeichnungen oder ein Papiertagebuch füllen dieses Diagramm.</translation>
    </message>
    <message>
        <source>Nothing has been run yet. Recordings or a paper log fill this page.</source>
        <translation>Noch wurde nichts gelaufen. Aufzeichnungen oder ein Papiertagebuch füllen diese Seite.</translation>
    </message>
    <message>
        <source>Nothing here yet. Add a test or race below, or add recordings.</source>
        <translation>Noch nichts hier. Füge unten einen Test oder ein Rennen hinzu, oder Aufzeichnungen.</translation>
    </message>
    <message>
        <source>Nothing is changed unless you do it.</source>
        <translation>Nichts wird geändert, wenn du es nicht tust.</translation>
    </message>
    <message>
        <source>Nothing is counted back, and the season&apos;s main race stays as it is</source>
        <translation>Nichts wird zurückgerechnet, und das Hauptrennen der Saison bleibt, wie es ist</translation>
    </message>
    <message>
        <source>Nothing moderate was run here.</source>
        <translation>Hier wurde nichts Mittleres gelaufen.</translation>
    </message>
    <message>
        <source>Nothing speaks against the lines in force.</source>
        <translation>Nichts spricht gegen die gültigen Linien.</translation>
    </message>
    <message>
        <source>Nothing stands out.</source>
        <translation>Nichts fällt auf.</translation>
    </message>
    <message>
        <source>Nothing to show yet</source>
        <translation>Noch nichts zu zeigen</translation>
    </message>
    <message>
        <source>Nothing was mended.</source>
        <translation>Nichts wurde ausgebessert.</translation>
    </message>
    <message>
        <source>Nov</source>
        <translation>Nov</translation>
    </message>
    <message>
        <source>November</source>
        <translation>November</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>Numbers (*.csv)</source>
        <translation>Zahlen (*.csv)</translation>
    </message>
    <message>
        <source>Numbers (Ctrl+T)</source>
        <translation>Zahlen (Strg+T)</translation>
    </message>
    <message>
        <source>Numbers behind this page</source>
        <translation>Zahlen hinter dieser Seite</translation>
    </message>
    <message>
        <source>Numbers of page {n}: {name}</source>
        <translation>Zahlen von Seite {n}: {name}</translation>
    </message>
    <message>
        <source>Numbers of this page</source>
        <translation>Zahlen dieser Seite</translation>
    </message>
    <message>
        <source>Oct</source>
        <translation>Okt</translation>
    </message>
    <message>
        <source>October</source>
        <translation>Oktober</translation>
    </message>
    <message>
        <source>Of its laps and events only the first {most} were read.</source>
        <translation>Von den Runden und Ereignissen wurden nur die ersten {most} gelesen.</translation>
    </message>
    <message>
        <source>Of the middle {meant} was meant, {unmeant} was not.</source>
        <translation>Von der Mitte waren {meant} beabsichtigt, {unmeant} nicht.</translation>
    </message>
    <message>
        <source>Of which stretch?</source>
        <translation>Von welchem Abschnitt?</translation>
    </message>
    <message>
        <source>Of {whole}, {n} run changes. It can be undone with Ctrl+Z.</source>
        <translation>Von {whole} ändert sich {n} Lauf. Rückgängig mit Strg+Z.</translation>
    </message>
    <message>
        <source>Of {whole}, {n} runs change. It can be undone with Ctrl+Z.</source>
        <translation>Von {whole} ändern sich {n} Läufe. Rückgängig mit Strg+Z.</translation>
    </message>
    <message>
        <source>Off</source>
        <translation>Aus</translation>
    </message>
    <message>
        <source>On one day, well warmed up, run three minutes as far as you can, rest for half an hour with some easy running, then twelve minutes as far as you can. The two together give critical speed, a little above LT2.</source>
        <translation>Laufe an einem Tag, gut eingelaufen, drei Minuten so weit du kannst, ruhe eine halbe Stunde mit etwas lockerem Laufen, dann zwölf Minuten so weit du kannst. Beides zusammen ergibt die kritische Geschwindigkeit, etwas über LT2.</translation>
    </message>
    <message>
        <source>One TCX file a recorded run, made anew: time, heart rate, speed, distance, altitude, cadence and power. No position, original file, name, note, shading or plan.</source>
        <translation>Eine TCX-Datei je aufgezeichnetem Lauf, neu erstellt: Zeit, Herzfrequenz, Geschwindigkeit, Strecke, Höhe, Schrittfrequenz und Leistung. Keine Position, Originaldatei, kein Name, keine Notiz, Stufe von Hand und kein Plan.</translation>
    </message>
    <message>
        <source>One TCX file a run: its clock in UTC, heart rate, speed, distance, altitude, cadence and power as far as they were recorded; where only positions were, distance reckoned from them.</source>
        <translation>Je Lauf eine TCX-Datei: ihre Uhr in UTC, Herzfrequenz, Geschwindigkeit, Strecke, Höhe, Schrittfrequenz und Leistung, soweit sie aufgezeichnet wurden; wo nur Positionen waren, die daraus berechnete Strecke.</translation>
    </message>
    <message>
        <source>One bout of work with rest before the next.</source>
        <translation>Eine Belastung mit Pause vor der nächsten.</translation>
    </message>
    <message>
        <source>One line each</source>
        <translation>Je eine Zeile</translation>
    </message>
    <message>
        <source>One run a line</source>
        <translation>Ein Lauf je Zeile</translation>
    </message>
    <message>
        <source>One run of {minutes} min, {n} samples: {channels}.</source>
        <translation>Ein Lauf von {minutes} min, {n} Messwerte: {channels}.</translation>
    </message>
    <message>
        <source>One session, cut so long after its start</source>
        <translation>Eine Einheit, so lange nach ihrem Start geteilt</translation>
    </message>
    <message>
        <source>One upright is one repetition; its width is its length.</source>
        <translation>Ein Balken ist eine Wiederholung; seine Breite ist ihre Länge.</translation>
    </message>
    <message>
        <source>One week easier in</source>
        <translation>Eine leichtere Woche von je</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>Open a run behind this page</source>
        <translation>Einen Lauf hinter dieser Seite öffnen</translation>
    </message>
    <message>
        <source>Open a table of a step test</source>
        <translation>Tabelle eines Stufentests öffnen</translation>
    </message>
    <message>
        <source>Open a text file</source>
        <translation>Textdatei öffnen</translation>
    </message>
    <message>
        <source>Open a text file…</source>
        <translation>Textdatei öffnen…</translation>
    </message>
    <message>
        <source>Open the example</source>
        <translation>Beispiel öffnen</translation>
    </message>
    <message>
        <source>Open the last of them</source>
        <translation>Den letzten davon öffnen</translation>
    </message>
    <message>
        <source>Open the plan</source>
        <translation>Plan öffnen</translation>
    </message>
    <message>
        <source>Open the run</source>
        <translation>Lauf öffnen</translation>
    </message>
    <message>
        <source>Open which run?</source>
        <translation>Welchen Lauf öffnen?</translation>
    </message>
    <message>
        <source>Open {runner}</source>
        <translation>{runner} öffnen</translation>
    </message>
    <message>
        <source>Open {session}, {day}</source>
        <translation>{session}, {day} öffnen</translation>
    </message>
    <message>
        <source>Opens the recordings pane</source>
        <translation>Öffnet den Bereich der Aufzeichnungen</translation>
    </message>
    <message>
        <source>Open…</source>
        <translation>Öffnen…</translation>
    </message>
    <message>
        <source>Other session</source>
        <translation>Andere Einheit</translation>
    </message>
    <message>
        <source>Other sport</source>
        <translation>Andere Sportart</translation>
    </message>
    <message>
        <source>Oxygen uptake, % of highest</source>
        <translation>Sauerstoff, % der höchsten</translation>
    </message>
    <message>
        <source>Pace</source>
        <translation>Tempo</translation>
    </message>
    <message>
        <source>Pace for one hour by a power law (good from 3.5 to 230 min): {pace}. With the oxygen-cost model, midway: LT2 about {lt2}, LT1 about {lt1}.</source>
        <translation>Tempo für eine Stunde nach einem Potenzgesetz (gut von 3,5 bis 230 min): {pace}. Mit dem Modell der Sauerstoffkosten, in der Mitte: LT2 etwa {lt2}, LT1 etwa {lt1}.</translation>
    </message>
    <message>
        <source>Pace of which race?</source>
        <translation>Das Tempo welchen Rennens?</translation>
    </message>
    <message>
        <source>Pace on level ground</source>
        <translation>Tempo auf ebenem Boden</translation>
    </message>
    <message>
        <source>Pace through the session, hills taken out, min{unit}</source>
        <translation>Tempo durch die Einheit, ohne Hügel, min{unit}</translation>
    </message>
    <message>
        <source>Pace through the session, min{unit}</source>
        <translation>Tempo durch die Einheit, min{unit}</translation>
    </message>
    <message>
        <source>Pace through the session, shaded by intensity</source>
        <translation>Tempo durch die Einheit, nach Intensität eingestuft</translation>
    </message>
    <message>
        <source>Paces, and times or distances not written, by boundaries from {source}.</source>
        <translation>Tempi sowie nicht geschriebene Zeiten oder Strecken nach Grenzen aus {source}.</translation>
    </message>
    <message>
        <source>Paces, and times or distances not written, by estimated boundaries from {source}.</source>
        <translation>Tempi sowie nicht geschriebene Zeiten oder Strecken nach geschätzten Grenzen aus {source}.</translation>
    </message>
    <message>
        <source>Page {n} of {count}</source>
        <translation>Seite {n} von {count}</translation>
    </message>
    <message>
        <source>Page {n} of {count}: {title}. {line}</source>
        <translation>Seite {n} von {count}: {title}. {line}</translation>
    </message>
    <message>
        <source>Page {n}: {title}</source>
        <translation>Seite {n}: {title}</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>Pages of the review</source>
        <translation>Seiten des Rückblicks</translation>
    </message>
    <message>
        <source>Pages of the runner</source>
        <translation>Seiten des Läufers</translation>
    </message>
    <message>
        <source>Pages of the season</source>
        <translation>Seiten der Saison</translation>
    </message>
    <message>
        <source>Pages written</source>
        <translation>Geschriebene Seiten</translation>
    </message>
    <message>
        <source>Pain, illness, chest pain, faintness or an uneven heartbeat: stop, and see a professional.</source>
        <translation>Schmerzen, Krankheit, Brustschmerz, Ohnmachtsgefühl oder unregelmäßiger Herzschlag: aufhören und ärztlichen Rat holen.</translation>
    </message>
    <message>
        <source>Pain, illness, signs of the heart or a way back from injury go before any of this: stop, and ask a professional. A coach&apos;s or doctor&apos;s word counts more than these lines.</source>
        <translation>Schmerzen, Krankheit, Zeichen des Herzens oder der Weg zurück nach einer Verletzung gehen all dem vor: aufhören und ärztlichen Rat holen. Das Wort eines Trainers oder Arztes zählt mehr als diese Zeilen.</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Paper log</source>
        <translation>Papiertagebuch</translation>
    </message>
    <message>
        <source>Paper log, as typed</source>
        <translation>Papiertagebuch, wie getippt</translation>
    </message>
    <message>
        <source>Part it again</source>
        <translation>Wieder trennen</translation>
    </message>
    <message>
        <source>Part two recordings of one run</source>
        <translation>Zwei Aufzeichnungen eines Laufs trennen</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Teile</translation>
    </message>
    <message>
        <source>Parts of the session</source>
        <translation>Teile der Einheit</translation>
    </message>
    <message>
        <source>Passed over</source>
        <translation>Übergangen</translation>
    </message>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>Paste a table</source>
        <translation>Tabelle einfügen</translation>
    </message>
    <message>
        <source>Picture (*.png)</source>
        <translation>Bild (*.png)</translation>
    </message>
    <message>
        <source>Pieces without a time are not counted until both speeds are known.</source>
        <translation>Stücke ohne Zeit zählen erst, wenn beide Geschwindigkeiten bekannt sind.</translation>
    </message>
    <message>
        <source>Pieces without a word or a pace are not judged.</source>
        <translation>Stücke ohne Wort oder Tempo werden nicht beurteilt.</translation>
    </message>
    <message>
        <source>Places are left out of every file.</source>
        <translation>Orte bleiben aus jeder Datei heraus.</translation>
    </message>
    <message>
        <source>Places within {metres} m of a point near home are left out, all others are in it.</source>
        <translation>Orte im Umkreis von {metres} m um einen Punkt nahe dem Zuhause sind ausgelassen, alle anderen sind darin.</translation>
    </message>
    <message>
        <source>Plan a day off</source>
        <translation>Ruhetag planen</translation>
    </message>
    <message>
        <source>Plan a long run as before</source>
        <translation>Langen Lauf wie zuvor planen</translation>
    </message>
    <message>
        <source>Plan a session</source>
        <translation>Einheit planen</translation>
    </message>
    <message>
        <source>Plan an easy run</source>
        <translation>Lockeren Lauf planen</translation>
    </message>
    <message>
        <source>Plan for {day}</source>
        <translation>Plan für {day}</translation>
    </message>
    <message>
        <source>Plan from</source>
        <translation>Planen ab</translation>
    </message>
    <message>
        <source>Plan from a calendar file</source>
        <translation>Plan aus einer Kalenderdatei</translation>
    </message>
    <message>
        <source>Plan from a calendar file…</source>
        <translation>Plan aus einer Kalenderdatei…</translation>
    </message>
    <message>
        <source>Plan one of the two sets</source>
        <translation>Eine der beiden Serien planen</translation>
    </message>
    <message>
        <source>Plan rule</source>
        <translation>Regel des Plans</translation>
    </message>
    <message>
        <source>Plan sessions from a calendar</source>
        <translation>Einheiten aus einem Kalender planen</translation>
    </message>
    <message>
        <source>Plan strides</source>
        <translation>Steigerungen planen</translation>
    </message>
    <message>
        <source>Plan the week as suggested</source>
        <translation>Woche wie vorgeschlagen planen</translation>
    </message>
    <message>
        <source>Plan this</source>
        <translation>Das planen</translation>
    </message>
    <message>
        <source>Planned</source>
        <translation>Geplant</translation>
    </message>
    <message>
        <source>Planned for {day}: {what}</source>
        <translation>Geplant für {day}: {what}</translation>
    </message>
    <message>
        <source>Planned: the week to come</source>
        <translation>Geplant: die kommende Woche</translation>
    </message>
    <message>
        <source>Planned: {what}</source>
        <translation>Geplant: {what}</translation>
    </message>
    <message>
        <source>Point at the trace, or use the arrow keys on it, to read why a second has its shade. Drag along it, or press Space, arrows and Enter, to say what a stretch was.</source>
        <translation>Zeige auf die Kurve oder nimm dort die Pfeiltasten, um zu lesen, warum eine Sekunde ihre Stufe hat. Ziehe darüber, oder Leertaste, Pfeile und Eingabe, um zu sagen, was ein Abschnitt war.</translation>
    </message>
    <message>
        <source>Power against {lt1} and {lt2} W, for {time}: meters differ, so this holds for the meter that these were found with.</source>
        <translation>Leistung gegen {lt1} und {lt2} W, über {time}: Messgeräte weichen voneinander ab, das gilt also für das Gerät, mit dem diese gefunden wurden.</translation>
    </message>
    <message>
        <source>Power law: time grows with distance to the power of 1.06, made on races of 3.5 to 230 minutes; optimistic for marathons from short races. Oxygen cost: the same aerobic capacity at the share of it that lasts so long, made for 3.5 minutes to 4 hours. A dash: outside that range.</source>
        <translation>Potenzgesetz: die Zeit wächst mit der Strecke hoch 1,06, aufgestellt an Rennen von 3,5 bis 230 Minuten; optimistisch für Marathons aus kurzen Rennen. Sauerstoffkosten: dieselbe aerobe Kapazität mit dem Anteil, der so lange durchzuhalten ist, aufgestellt für 3,5 Minuten bis 4 Stunden. Ein Strich: außerhalb dieses Bereichs.</translation>
    </message>
    <message>
        <source>Predicted for {count} of {length}: highest uptake {highest}, {near} near the highest, heart rate up to {heart}.</source>
        <translation>Vorhergesagt für {count} mal {length}: höchste Aufnahme {highest}, {near} nahe der höchsten, Herzfrequenz bis {heart}.</translation>
    </message>
    <message>
        <source>Preferences</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Preferences…</source>
        <translation>Einstellungen…</translation>
    </message>
    <message>
        <source>Present (F5)</source>
        <translation>Vorführen (F5)</translation>
    </message>
    <message>
        <source>Previous</source>
        <translation>Vorige</translation>
    </message>
    <message>
        <source>Previous session</source>
        <translation>Vorige Einheit</translation>
    </message>
    <message>
        <source>Put a line away</source>
        <translation>Zeile weglegen</translation>
    </message>
    <message>
        <source>Put away</source>
        <translation>Weglegen</translation>
    </message>
    <message>
        <source>Put away for this stretch: {title}</source>
        <translation>Für diesen Abschnitt weggelegt: {title}</translation>
    </message>
    <message>
        <source>Put forward by the program; a coach puts it in other words.</source>
        <translation>Vorgeschlagen vom Programm; ein Trainer fasst es in andere Worte.</translation>
    </message>
    <message>
        <source>Put into the plan</source>
        <translation>In den Plan setzen</translation>
    </message>
    <message>
        <source>Quiet</source>
        <translation>Ruhig</translation>
    </message>
    <message>
        <source>Race</source>
        <translation>Rennen</translation>
    </message>
    <message>
        <source>Race day</source>
        <translation>Renntag</translation>
    </message>
    <message>
        <source>Race name</source>
        <translation>Name des Rennens</translation>
    </message>
    <message>
        <source>Race paces are reckoned from LT2 speed, taken for the pace of one hour, by Riegel&apos;s power law.</source>
        <translation>Renntempi sind aus der Geschwindigkeit an LT2 berechnet, als Tempo einer Stunde genommen, nach Riegels Potenzgesetz.</translation>
    </message>
    <message>
        <source>Race paces are reckoned from {distance} in {time}, by the power law.</source>
        <translation>Renntempi sind aus {distance} in {time} nach dem Potenzgesetz berechnet.</translation>
    </message>
    <message>
        <source>Race week</source>
        <translation>Rennwoche</translation>
    </message>
    <message>
        <source>Race: {before} to {after}</source>
        <translation>Rennen: {before} zu {after}</translation>
    </message>
    <message>
        <source>Races</source>
        <translation>Rennen</translation>
    </message>
    <message>
        <source>Races and blocks…</source>
        <translation>Rennen und Blöcke…</translation>
    </message>
    <message>
        <source>Races and goals</source>
        <translation>Rennen und Ziele</translation>
    </message>
    <message>
        <source>Races and hard efforts of</source>
        <translation>Rennen und harte Belastungen aus</translation>
    </message>
    <message>
        <source>Read &quot;{words}&quot; as {reading}</source>
        <translation>„{words}“ als {reading} lesen</translation>
    </message>
    <message>
        <source>Read as: {words}.</source>
        <translation>Gelesen als: {words}.</translation>
    </message>
    <message>
        <source>Read earlier runs again</source>
        <translation>Frühere Läufe neu lesen</translation>
    </message>
    <message>
        <source>Read it so</source>
        <translation>So lesen</translation>
    </message>
    <message>
        <source>Reading it ended the reader; it was left out.</source>
        <translation>Das Lesen brach den Leser ab; sie wurde weggelassen.</translation>
    </message>
    <message>
        <source>Reading {done} of {whole}</source>
        <translation>Liest {done} von {whole}</translation>
    </message>
    <message>
        <source>Recognised are half an hour at one even speed, and trials of about 3 and 12 minutes in one run, with easy running around them.</source>
        <translation>Erkannt werden eine halbe Stunde mit gleichmäßiger Geschwindigkeit sowie Versuche von etwa 3 und 12 Minuten in einem Lauf, mit lockerem Laufen darum herum.</translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
    <message>
        <source>Recordings taken for the same run</source>
        <translation>Für denselben Lauf gehaltene Aufzeichnungen</translation>
    </message>
    <message>
        <source>Recovery</source>
        <translation>Erholung</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Redo: {step}</source>
        <translation>Wiederherstellen: {step}</translation>
    </message>
    <message>
        <source>Remark</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>Remark on this page</source>
        <translation>Bemerkung zu dieser Seite</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Remove a planned session</source>
        <translation>Geplante Einheit entfernen</translation>
    </message>
    <message>
        <source>Remove a race</source>
        <translation>Rennen entfernen</translation>
    </message>
    <message>
        <source>Remove a test</source>
        <translation>Test entfernen</translation>
    </message>
    <message>
        <source>Remove the race</source>
        <translation>Rennen entfernen</translation>
    </message>
    <message>
        <source>Remove this block</source>
        <translation>Diesen Block entfernen</translation>
    </message>
    <message>
        <source>Remove this race</source>
        <translation>Dieses Rennen entfernen</translation>
    </message>
    <message>
        <source>Remove {gone}</source>
        <translation>{gone} entfernen</translation>
    </message>
    <message>
        <source>Repetition</source>
        <translation>Wiederholung</translation>
    </message>
    <message>
        <source>Repetition bench</source>
        <translation>Wiederholungslabor</translation>
    </message>
    <message>
        <source>Repetition book</source>
        <translation>Wiederholungsbuch</translation>
    </message>
    <message>
        <source>Repetitions</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>Repetitions are whole numbers up to {most}.</source>
        <translation>Wiederholungen sind ganze Zahlen bis {most}.</translation>
    </message>
    <message>
        <source>Repetitions as a table</source>
        <translation>Wiederholungen als Tabelle</translation>
    </message>
    <message>
        <source>Resting and highest are not known.</source>
        <translation>Ruhewert und Höchstwert sind nicht bekannt.</translation>
    </message>
    <message>
        <source>Resting heart rate</source>
        <translation>Ruheherzfrequenz</translation>
    </message>
    <message>
        <source>Resting {beats}</source>
        <translation>Ruhe {beats}</translation>
    </message>
    <message>
        <source>Review</source>
        <translation>Rückblick</translation>
    </message>
    <message>
        <source>Review: notes</source>
        <translation>Rückblick: Notizen</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Richtig</translation>
    </message>
    <message>
        <source>Right season</source>
        <translation>Rechte Saison</translation>
    </message>
    <message>
        <source>Right set</source>
        <translation>Rechte Serie</translation>
    </message>
    <message>
        <source>Right set: same metres twice as long</source>
        <translation>Rechte Serie: dieselben Meter doppelt so lang</translation>
    </message>
    <message>
        <source>Right set: the same metres half as long</source>
        <translation>Rechte Serie: dieselben Meter halb so lang</translation>
    </message>
    <message>
        <source>Right would be LT1 232 W and LT2 283 W.</source>
        <translation>Richtig wären LT1 232 W und LT2 283 W.</translation>
    </message>
    <message>
        <source>Right would be LT1 5:20 and 150, LT2 4:30 and 170.</source>
        <translation>Richtig wäre LT1 5:20 und 150, LT2 4:30 und 170.</translation>
    </message>
    <message>
        <source>Right, space, page down: on    Left, page up: back    number, Enter: go to    B: blank    O: open a run    Esc: end</source>
        <translation>Rechts, Leertaste, Bild ab: weiter    Links, Bild auf: zurück    Zahl, Eingabe: gehe zu    B: leer    O: Lauf öffnen    Esc: Ende</translation>
    </message>
    <message>
        <source>Rows are weeks grouped by block, columns are days</source>
        <translation>Zeilen sind Wochen nach Blöcken, Spalten sind Tage</translation>
    </message>
    <message>
        <source>Run</source>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>Run at an even pace for some minutes, then say two or three whole sentences aloud. If they come easily, as at a table, you are below LT1. If you can say them but would rather not, and breathe in the middle of a sentence, you are at LT1 or between the lines. If only single words come, you are above LT2.</source>
        <translation>Laufe einige Minuten in gleichmäßigem Tempo und sage dann zwei oder drei ganze Sätze laut. Kommen sie mühelos wie am Tisch, bist du unter LT1. Kannst du sie sagen, möchtest es aber lieber nicht und atmest mitten im Satz, bist du an LT1 oder zwischen den Linien. Kommen nur einzelne Wörter, bist du über LT2.</translation>
    </message>
    <message>
        <source>Run easily and regularly first; everything else rests on it.</source>
        <translation>Zuerst locker und regelmäßig laufen; alles andere ruht darauf.</translation>
    </message>
    <message>
        <source>Run easily: {wanted} easy is wanted, {block} had {now}.</source>
        <translation>Laufe locker: gewünscht sind {wanted} locker, {block} hatte {now}.</translation>
    </message>
    <message>
        <source>Run of {day} {month} {year}: {what}</source>
        <translation>Lauf vom {day}. {month} {year}: {what}</translation>
    </message>
    <message>
        <source>Run with a field test in it</source>
        <translation>Lauf mit einem Feldtest darin</translation>
    </message>
    <message>
        <source>Runner</source>
        <translation>Läufer</translation>
    </message>
    <message>
        <source>Runner&apos;s record (*.zip)</source>
        <translation>Akte eines Läufers (*.zip)</translation>
    </message>
    <message>
        <source>Running above the second threshold (LT2).</source>
        <translation>Laufen über der zweiten Schwelle (LT2).</translation>
    </message>
    <message>
        <source>Running below the first threshold (LT1).</source>
        <translation>Laufen unter der ersten Schwelle (LT1).</translation>
    </message>
    <message>
        <source>Running between the two thresholds: harder than it feels, easier than it helps.</source>
        <translation>Laufen zwischen den beiden Schwellen: härter, als es sich anfühlt, und zu leicht, um zu helfen.</translation>
    </message>
    <message>
        <source>Running is kept but not judged until there are thresholds.</source>
        <translation>Laufen wird aufbewahrt, aber erst beurteilt, wenn es Schwellen gibt.</translation>
    </message>
    <message>
        <source>Running power</source>
        <translation>Laufleistung</translation>
    </message>
    <message>
        <source>Running power at LT1, LT2</source>
        <translation>Laufleistung an LT1, LT2</translation>
    </message>
    <message>
        <source>Running power through the session, W</source>
        <translation>Laufleistung durch die Einheit, W</translation>
    </message>
    <message>
        <source>Running power through the session, shaded by intensity</source>
        <translation>Laufleistung durch die Einheit, nach Intensität eingestuft</translation>
    </message>
    <message>
        <source>Running power {lt1} and {lt2} W</source>
        <translation>Laufleistung {lt1} und {lt2} W</translation>
    </message>
    <message>
        <source>Running time of a week nowadays</source>
        <translation>Laufzeit einer Woche zurzeit</translation>
    </message>
    <message>
        <source>Running with neither speed nor heart rate, or before there were thresholds.</source>
        <translation>Laufen ohne Geschwindigkeit und Herzfrequenz, oder bevor es Schwellen gab.</translation>
    </message>
    <message>
        <source>Runs</source>
        <translation>Läufe</translation>
    </message>
    <message>
        <source>Runs behind this number</source>
        <translation>Läufe hinter dieser Zahl</translation>
    </message>
    <message>
        <source>Runs come in here</source>
        <translation>Hier kommen Läufe herein</translation>
    </message>
    <message>
        <source>Runs judged</source>
        <translation>Beurteilte Läufe</translation>
    </message>
    <message>
        <source>Runs judged anew: {n} of {whole}</source>
        <translation>Neu beurteilte Läufe: {n} von {whole}</translation>
    </message>
    <message>
        <source>Runs that count</source>
        <translation>Läufe, die zählen</translation>
    </message>
    <message>
        <source>Runs without places</source>
        <translation>Läufe ohne Orte</translation>
    </message>
    <message>
        <source>Runs without the places near home</source>
        <translation>Läufe ohne die Orte nahe dem Zuhause</translation>
    </message>
    <message>
        <source>Same metres, same pace.</source>
        <translation>Dieselben Meter, dasselbe Tempo.</translation>
    </message>
    <message>
        <source>Same metres.</source>
        <translation>Dieselben Meter.</translation>
    </message>
    <message>
        <source>Same pace.</source>
        <translation>Dasselbe Tempo.</translation>
    </message>
    <message>
        <source>Same run</source>
        <translation>Derselbe Lauf</translation>
    </message>
    <message>
        <source>Samples left out for an impossible time: {n}.</source>
        <translation>Messwerte mit unmöglicher Zeit weggelassen: {n}.</translation>
    </message>
    <message>
        <source>Samples left out for want of a time: {n}.</source>
        <translation>Messwerte ohne Zeit weggelassen: {n}.</translation>
    </message>
    <message>
        <source>Samples left out, from before the clock was set: {n}.</source>
        <translation>Messwerte weggelassen, bevor die Uhr gestellt war: {n}.</translation>
    </message>
    <message>
        <source>Samples left out, hours away from any run: {n}.</source>
        <translation>Messwerte weggelassen, Stunden von jedem Lauf entfernt: {n}.</translation>
    </message>
    <message>
        <source>Samples of one run</source>
        <translation>Messwerte eines Laufs</translation>
    </message>
    <message>
        <source>Sat</source>
        <translation>Sa</translation>
    </message>
    <message>
        <source>Saturday</source>
        <translation>Samstag</translation>
    </message>
    <message>
        <source>Saturday or Sunday?</source>
        <translation>Samstag oder Sonntag?</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Save as HTML…</source>
        <translation>Als HTML speichern…</translation>
    </message>
    <message>
        <source>Save as PDF…</source>
        <translation>Als PDF speichern…</translation>
    </message>
    <message>
        <source>Save as {kind}</source>
        <translation>Als {kind} speichern</translation>
    </message>
    <message>
        <source>Save chart…</source>
        <translation>Diagramm speichern…</translation>
    </message>
    <message>
        <source>Save the chart</source>
        <translation>Diagramm speichern</translation>
    </message>
    <message>
        <source>Save this page</source>
        <translation>Diese Seite speichern</translation>
    </message>
    <message>
        <source>Saved: {file}. Places are left out.</source>
        <translation>Gespeichert: {file}. Orte sind weggelassen.</translation>
    </message>
    <message>
        <source>Say of {day}: meant or not</source>
        <translation>Zu {day} sagen: beabsichtigt oder nicht</translation>
    </message>
    <message>
        <source>Say what was meant</source>
        <translation>Sagen, was beabsichtigt war</translation>
    </message>
    <message>
        <source>Say when a run started</source>
        <translation>Sagen, wann ein Lauf begann</translation>
    </message>
    <message>
        <source>Say when it started</source>
        <translation>Beginn angeben</translation>
    </message>
    <message>
        <source>Say when {file} started</source>
        <translation>Beginn von {file} angeben</translation>
    </message>
    <message>
        <source>Season</source>
        <translation>Saison</translation>
    </message>
    <message>
        <source>Season file</source>
        <translation>Saisondatei</translation>
    </message>
    <message>
        <source>Season in a line</source>
        <translation>Saison in einer Zeile</translation>
    </message>
    <message>
        <source>Season sheet</source>
        <translation>Saisonblatt</translation>
    </message>
    <message>
        <source>Season {first} to {last}</source>
        <translation>Saison {first} bis {last}</translation>
    </message>
    <message>
        <source>Season {year}</source>
        <translation>Saison {year}</translation>
    </message>
    <message>
        <source>Sep</source>
        <translation>Sep</translation>
    </message>
    <message>
        <source>September</source>
        <translation>September</translation>
    </message>
    <message>
        <source>Session</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Session {session}, {day}</source>
        <translation>Einheit {session}, {day}</translation>
    </message>
    <message>
        <source>Sessions</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>Set effort</source>
        <translation>Anstrengung setzen</translation>
    </message>
    <message>
        <source>Set out for as moderate: by plan, by name, in a race, or by how it was run.</source>
        <translation>Als mittel angegangen: nach Plan, nach dem Namen, im Rennen oder nach der Art des Laufens.</translation>
    </message>
    <message>
        <source>Set spacing</source>
        <translation>Abstand setzen</translation>
    </message>
    <message>
        <source>Set spacing of hard days</source>
        <translation>Abstand harter Tage setzen</translation>
    </message>
    <message>
        <source>Set the belt speed</source>
        <translation>Bandgeschwindigkeit setzen</translation>
    </message>
    <message>
        <source>Set the sport</source>
        <translation>Sportart setzen</translation>
    </message>
    <message>
        <source>Set the zone</source>
        <translation>Zeitzone setzen</translation>
    </message>
    <message>
        <source>Sets within sets within sets: how should this be read?</source>
        <translation>Serien in Serien in Serien: wie soll das gelesen werden?</translation>
    </message>
    <message>
        <source>Settle</source>
        <translation>Klären</translation>
    </message>
    <message>
        <source>Settled: {kept} kept, {taken} taken from the other copy.</source>
        <translation>Geklärt: {kept} behalten, {taken} aus der anderen Kopie übernommen.</translation>
    </message>
    <message>
        <source>Shaded by estimated thresholds</source>
        <translation>Nach geschätzten Schwellen eingestuft</translation>
    </message>
    <message>
        <source>Shaded by pace and heart rate, and by running power where pace was missing.</source>
        <translation>Nach Tempo und Herzfrequenz eingestuft, und nach Laufleistung, wo das Tempo fehlte.</translation>
    </message>
    <message>
        <source>Shaded by pace and heart rate.</source>
        <translation>Nach Tempo und Herzfrequenz eingestuft.</translation>
    </message>
    <message>
        <source>Shaded by running power, as no pace was recorded.</source>
        <translation>Nach Laufleistung eingestuft, da kein Tempo aufgezeichnet wurde.</translation>
    </message>
    <message>
        <source>Shaded by running power, as the thresholds hold no pace.</source>
        <translation>Nach Laufleistung eingestuft, da die Schwellen kein Tempo enthalten.</translation>
    </message>
    <message>
        <source>Shaded by the words alone: no speeds at LT1 and LT2 are known yet.</source>
        <translation>Nur nach den Worten eingestuft: noch sind keine Geschwindigkeiten an LT1 und LT2 bekannt.</translation>
    </message>
    <message>
        <source>Shaded by the words of the diary.</source>
        <translation>Nach den Worten des Tagebuchs eingestuft.</translation>
    </message>
    <message>
        <source>Share of easy</source>
        <translation>Anteil locker</translation>
    </message>
    <message>
        <source>Share of easy wanted</source>
        <translation>Gewünschter Anteil locker</translation>
    </message>
    <message>
        <source>Shares are of</source>
        <translation>Anteile gelten für</translation>
    </message>
    <message>
        <source>Shares of every stretch</source>
        <translation>Anteile jedes Abschnitts</translation>
    </message>
    <message>
        <source>Short relaxed sprints of about 10 to 20 seconds in an easy run.</source>
        <translation>Kurze gelöste Sprints von etwa 10 bis 20 Sekunden in einem lockeren Lauf.</translation>
    </message>
    <message>
        <source>Shorthand</source>
        <translation>Kürzel</translation>
    </message>
    <message>
        <source>Shorthand known for this runner: {words}.</source>
        <translation>Bekannte Kürzel dieses Läufers: {words}.</translation>
    </message>
    <message>
        <source>Shorthand…</source>
        <translation>Kürzel…</translation>
    </message>
    <message>
        <source>Show as table</source>
        <translation>Als Tabelle zeigen</translation>
    </message>
    <message>
        <source>Show chart</source>
        <translation>Diagramm zeigen</translation>
    </message>
    <message>
        <source>Show distance in kilometres</source>
        <translation>Strecke in Kilometern zeigen</translation>
    </message>
    <message>
        <source>Show distance in miles</source>
        <translation>Strecke in Meilen zeigen</translation>
    </message>
    <message>
        <source>Show heart rate</source>
        <translation>Herzfrequenz zeigen</translation>
    </message>
    <message>
        <source>Show pace</source>
        <translation>Tempo zeigen</translation>
    </message>
    <message>
        <source>Show running power</source>
        <translation>Laufleistung zeigen</translation>
    </message>
    <message>
        <source>Show the folder</source>
        <translation>Ordner zeigen</translation>
    </message>
    <message>
        <source>Show the folder of {file}</source>
        <translation>Ordner von {file} zeigen</translation>
    </message>
    <message>
        <source>Show time in hours</source>
        <translation>Zeit in Stunden zeigen</translation>
    </message>
    <message>
        <source>Show what it would change</source>
        <translation>Zeigen, was es ändern würde</translation>
    </message>
    <message>
        <source>Side by side</source>
        <translation>Nebeneinander</translation>
    </message>
    <message>
        <source>Skip</source>
        <translation>Überspringen</translation>
    </message>
    <message>
        <source>Skip a file</source>
        <translation>Datei überspringen</translation>
    </message>
    <message>
        <source>Skip {file}</source>
        <translation>{file} überspringen</translation>
    </message>
    <message>
        <source>Slowest</source>
        <translation>Langsamste</translation>
    </message>
    <message>
        <source>Slowest and fastest lie {seconds} s{unit} apart.</source>
        <translation>Langsamste und schnellste liegen {seconds} s{unit} auseinander.</translation>
    </message>
    <message>
        <source>Some weeks of training with one purpose, such as base, support or specific.</source>
        <translation>Einige Wochen Training mit einem Zweck, etwa Grundlage, Aufbau oder spezifisch.</translation>
    </message>
    <message>
        <source>Spacing of hard days</source>
        <translation>Abstand harter Tage</translation>
    </message>
    <message>
        <source>Specific</source>
        <translation>Spezifisch</translation>
    </message>
    <message>
        <source>Speed shown by the treadmill, km/h</source>
        <translation>Vom Laufband gezeigte Geschwindigkeit, km/h</translation>
    </message>
    <message>
        <source>Split at the chosen week</source>
        <translation>An der gewählten Woche teilen</translation>
    </message>
    <message>
        <source>Split or join</source>
        <translation>Teilen oder verbinden</translation>
    </message>
    <message>
        <source>Split {whole}</source>
        <translation>{whole} teilen</translation>
    </message>
    <message>
        <source>Split, join or remove this block</source>
        <translation>Diesen Block teilen, verbinden oder entfernen</translation>
    </message>
    <message>
        <source>Sport</source>
        <translation>Sportart</translation>
    </message>
    <message>
        <source>Squad</source>
        <translation>Gruppe</translation>
    </message>
    <message>
        <source>Stair</source>
        <translation>Treppe</translation>
    </message>
    <message>
        <source>Standing, slow walking, or a timer that stood still; counted in no shade.</source>
        <translation>Stehen, langsames Gehen oder eine stehende Stoppuhr; in keiner Stufe gezählt.</translation>
    </message>
    <message>
        <source>Stands before every number that comes from thresholds nobody has confirmed yet.</source>
        <translation>Steht vor jeder Zahl aus Schwellen, die noch niemand bestätigt hat.</translation>
    </message>
    <message>
        <source>Stanley, Peake &amp; Buchheit, Sports Med. 43:1259, 2013 (hours from memory).</source>
        <translation>Stanley, Peake &amp; Buchheit, Sports Med. 43:1259, 2013 (Stunden aus dem Gedächtnis).</translation>
    </message>
    <message>
        <source>Starts, moved by</source>
        <translation>Startzeiten, verschoben um</translation>
    </message>
    <message>
        <source>Step test: one step a row</source>
        <translation>Stufentest: eine Stufe je Zeile</translation>
    </message>
    <message>
        <source>Step tests and trials are run to the limit. With heart disease, heart medicines, chest pain, faintness, illness, or after a long break, see a doctor first, and stop if any of these comes.</source>
        <translation>Stufentests und Versuche gehen bis an die Grenze. Bei einer Herzkrankheit, Herzmedikamenten, Brustschmerz, Ohnmachtsgefühl, Krankheit oder nach langer Pause zuerst zum Arzt, und aufhören, wenn eines davon auftritt.</translation>
    </message>
    <message>
        <source>Step tests and trials are run to the limit. With heart disease, heart medicines, chest pain, faintness, illness, or after a long break, see a doctor first, and stop if any of these comes. A physician or a coach who knows you has the last word.</source>
        <translation>Stufentests und Versuche gehen bis an die Grenze. Bei einer Herzkrankheit, Herzmedikamenten, Brustschmerz, Ohnmachtsgefühl, Krankheit oder nach langer Pause zuerst zum Arzt, und aufhören, wenn eines davon auftritt. Ein Arzt oder ein Trainer, der dich kennt, hat das letzte Wort.</translation>
    </message>
    <message>
        <source>Step {n}: {problem}</source>
        <translation>Stufe {n}: {problem}</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop watching</source>
        <translation>Nicht mehr beobachten</translation>
    </message>
    <message>
        <source>Stopped. No file was written.</source>
        <translation>Angehalten. Keine Datei wurde geschrieben.</translation>
    </message>
    <message>
        <source>Stopped. Nothing was written.</source>
        <translation>Angehalten. Nichts wurde geschrieben.</translation>
    </message>
    <message>
        <source>Stopped. Taken in: {what}.</source>
        <translation>Angehalten. Eingelesen: {what}.</translation>
    </message>
    <message>
        <source>Stopped. What was read before stays: {words}</source>
        <translation>Angehalten. Was vorher gelesen wurde, bleibt: {words}</translation>
    </message>
    <message>
        <source>Stops judging runs anew; it goes on at the next start</source>
        <translation>Hält das neue Beurteilen an; beim nächsten Start geht es weiter</translation>
    </message>
    <message>
        <source>Stretch of the season</source>
        <translation>Abschnitt der Saison</translation>
    </message>
    <message>
        <source>Strides</source>
        <translation>Steigerungen</translation>
    </message>
    <message>
        <source>Strong</source>
        <translation>Kräftig</translation>
    </message>
    <message>
        <source>Sun</source>
        <translation>So</translation>
    </message>
    <message>
        <source>Sunday</source>
        <translation>Sonntag</translation>
    </message>
    <message>
        <source>Support</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>Swimming</source>
        <translation>Schwimmen</translation>
    </message>
    <message>
        <source>Tables (*.csv *.txt *.tsv)</source>
        <translation>Tabellen (*.csv *.txt *.tsv)</translation>
    </message>
    <message>
        <source>Tables as CSV…</source>
        <translation>Tabellen als CSV…</translation>
    </message>
    <message>
        <source>Tables with the same headings are read so from now on.</source>
        <translation>Tabellen mit denselben Überschriften werden von jetzt an so gelesen.</translation>
    </message>
    <message>
        <source>Take a zone from its place</source>
        <translation>Zeitzone nach dem Ort nehmen</translation>
    </message>
    <message>
        <source>Take back what was said about the shades</source>
        <translation>Von Hand gesetzte Stufen zurücknehmen</translation>
    </message>
    <message>
        <source>Take in a record</source>
        <translation>Akte einlesen</translation>
    </message>
    <message>
        <source>Take in a record…</source>
        <translation>Akte einlesen…</translation>
    </message>
    <message>
        <source>Take in a runner&apos;s record</source>
        <translation>Akte eines Läufers einlesen</translation>
    </message>
    <message>
        <source>Take in {page}</source>
        <translation>{page} aufnehmen</translation>
    </message>
    <message>
        <source>Take it in</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Take it in here</source>
        <translation>Hier einlesen</translation>
    </message>
    <message>
        <source>Take the chart along</source>
        <translation>Diagramm mitnehmen</translation>
    </message>
    <message>
        <source>Take the other copy&apos;s word for {n}</source>
        <translation>Wort der anderen Kopie für {n} übernehmen</translation>
    </message>
    <message>
        <source>Take theirs</source>
        <translation>Fremdes übernehmen</translation>
    </message>
    <message>
        <source>Take {count} zones from their places</source>
        <translation>{count} Zeitzonen nach den Orten nehmen</translation>
    </message>
    <message>
        <source>Taken back: {step}</source>
        <translation>Zurückgenommen: {step}</translation>
    </message>
    <message>
        <source>Taken for the same run</source>
        <translation>Für denselben Lauf gehalten</translation>
    </message>
    <message>
        <source>Taken in: {what}.</source>
        <translation>Eingelesen: {what}.</translation>
    </message>
    <message>
        <source>Taking in {done} of {whole}   {now}</source>
        <translation>Liest ein {done} von {whole}   {now}</translation>
    </message>
    <message>
        <source>Taking in …</source>
        <translation>Liest ein …</translation>
    </message>
    <message>
        <source>Taller rows</source>
        <translation>Höhere Zeilen</translation>
    </message>
    <message>
        <source>Taper</source>
        <translation>Tapering</translation>
    </message>
    <message>
        <source>Te&amp;xtures</source>
        <translation>&amp;Texturen</translation>
    </message>
    <message>
        <source>Tests without a device</source>
        <translation>Tests ohne Gerät</translation>
    </message>
    <message>
        <source>Tests without a device…</source>
        <translation>Tests ohne Gerät…</translation>
    </message>
    <message>
        <source>Text &amp;size</source>
        <translation>Schrift&amp;größe</translation>
    </message>
    <message>
        <source>Text (*.txt *.md *.csv *.log)</source>
        <translation>Text (*.txt *.md *.csv *.log)</translation>
    </message>
    <message>
        <source>Text size {n} per cent</source>
        <translation>Schriftgröße {n} Prozent</translation>
    </message>
    <message>
        <source>Text too small?</source>
        <translation>Schrift zu klein?</translation>
    </message>
    <message>
        <source>Text {n} %</source>
        <translation>Schrift {n} %</translation>
    </message>
    <message>
        <source>Textures off</source>
        <translation>Texturen aus</translation>
    </message>
    <message>
        <source>Textures quiet</source>
        <translation>Texturen ruhig</translation>
    </message>
    <message>
        <source>Textures strong</source>
        <translation>Texturen kräftig</translation>
    </message>
    <message>
        <source>That reads as a typed log.</source>
        <translation>Das liest sich wie ein getipptes Tagebuch.</translation>
    </message>
    <message>
        <source>That run is no longer there.</source>
        <translation>Dieser Lauf ist nicht mehr da.</translation>
    </message>
    <message>
        <source>The archive holds more than {most} files.</source>
        <translation>Das Archiv enthält mehr als {most} Dateien.</translation>
    </message>
    <message>
        <source>The archive is damaged: {error}.</source>
        <translation>Das Archiv ist beschädigt: {error}.</translation>
    </message>
    <message>
        <source>The archive unpacks to more than {gb} GB.</source>
        <translation>Das Archiv wird ausgepackt größer als {gb} GB.</translation>
    </message>
    <message>
        <source>The arrow keys choose another day; a click on a bar opens it.</source>
        <translation>Die Pfeiltasten wählen einen anderen Tag; ein Klick auf einen Balken öffnet ihn.</translation>
    </message>
    <message>
        <source>The bench reckons from paces at LT1 and LT2. Give them under Thresholds.</source>
        <translation>Das Labor rechnet mit den Tempi an LT1 und LT2. Gib sie unter „Schwellen“ an.</translation>
    </message>
    <message>
        <source>The calendar holds no event to plan.</source>
        <translation>Der Kalender enthält kein Ereignis zum Planen.</translation>
    </message>
    <message>
        <source>The calendar is larger than 5 MB.</source>
        <translation>Der Kalender ist größer als 5 MB.</translation>
    </message>
    <message>
        <source>The causes of these runs are not known yet; they come when the runs are judged again.</source>
        <translation>Die Ursachen dieser Läufe sind noch nicht bekannt; sie kommen, wenn die Läufe neu beurteilt werden.</translation>
    </message>
    <message>
        <source>The clock is that of the place of the run: {zone}.</source>
        <translation>Die Uhrzeit ist die am Ort des Laufs: {zone}.</translation>
    </message>
    <message>
        <source>The clock is that of your own zone: the one of this computer.</source>
        <translation>Die Uhrzeit ist die deiner eigenen Zeitzone: die dieses Rechners.</translation>
    </message>
    <message>
        <source>The clock is that of your own zone: {zone}.</source>
        <translation>Die Uhrzeit ist die deiner eigenen Zeitzone: {zone}.</translation>
    </message>
    <message>
        <source>The clock is the one in the file.</source>
        <translation>Die Uhrzeit ist die aus der Datei.</translation>
    </message>
    <message>
        <source>The clock was kept from an earlier version, as it was taken in then.</source>
        <translation>Die Uhrzeit stammt aus einer früheren Version, so wie sie damals eingelesen wurde.</translation>
    </message>
    <message>
        <source>The clock was set by you: {zone}.</source>
        <translation>Die Uhrzeit hast du gesetzt: {zone}.</translation>
    </message>
    <message>
        <source>The curve needs 3 hours of judged running; the shares below hold already.</source>
        <translation>Die Kurve braucht 3 Stunden beurteiltes Laufen; die Anteile unten gelten schon.</translation>
    </message>
    <message>
        <source>The days were much alike by effort times minutes. Foster (1998) saw illness oftener in weeks of high monotony and strain; a hint, no forecast.</source>
        <translation>Die Tage waren sich nach Anstrengung mal Minuten sehr ähnlich. Foster (1998) sah Krankheit öfter in Wochen hoher Monotonie und Beanspruchung; ein Hinweis, keine Vorhersage.</translation>
    </message>
    <message>
        <source>The earlier number first. More is neither better nor worse.</source>
        <translation>Die frühere Zahl zuerst. Mehr ist weder besser noch schlechter.</translation>
    </message>
    <message>
        <source>The easy share was held</source>
        <translation>Der Anteil locker wurde gehalten</translation>
    </message>
    <message>
        <source>The example season</source>
        <translation>Die Beispielsaison</translation>
    </message>
    <message>
        <source>The file cannot be opened: {error}.</source>
        <translation>Die Datei lässt sich nicht öffnen: {error}.</translation>
    </message>
    <message>
        <source>The file is empty.</source>
        <translation>Die Datei ist leer.</translation>
    </message>
    <message>
        <source>The file may not be read: permission is missing.</source>
        <translation>Die Datei darf nicht gelesen werden: die Erlaubnis fehlt.</translation>
    </message>
    <message>
        <source>The folder of originals cannot be made: {error} ({folder}).</source>
        <translation>Der Ordner der Originale lässt sich nicht anlegen: {error} ({folder}).</translation>
    </message>
    <message>
        <source>The goal is {pace}.</source>
        <translation>Das Ziel ist {pace}.</translation>
    </message>
    <message>
        <source>The gzip file holds nothing.</source>
        <translation>Die gzip-Datei enthält nichts.</translation>
    </message>
    <message>
        <source>The gzip file is cut short after {n} bytes.</source>
        <translation>Die gzip-Datei ist nach {n} Bytes abgeschnitten.</translation>
    </message>
    <message>
        <source>The gzip file is damaged near byte {n}.</source>
        <translation>Die gzip-Datei ist nahe Byte {n} beschädigt.</translation>
    </message>
    <message>
        <source>The hard efforts all lasted about as long: a short and a long one are needed.</source>
        <translation>Die harten Belastungen dauerten alle etwa gleich lang: gebraucht werden eine kurze und eine lange.</translation>
    </message>
    <message>
        <source>The hard efforts do not agree on one line: not all were all out.</source>
        <translation>Die harten Belastungen passen nicht auf eine Linie: nicht alle waren mit aller Kraft.</translation>
    </message>
    <message>
        <source>The import ended early: {error}</source>
        <translation>Das Einlesen endete vorzeitig: {error}</translation>
    </message>
    <message>
        <source>The last day must not lie before the first.</source>
        <translation>Der letzte Tag darf nicht vor dem ersten liegen.</translation>
    </message>
    <message>
        <source>The last days before a race with less running.</source>
        <translation>Die letzten Tage vor einem Rennen mit weniger Laufen.</translation>
    </message>
    <message>
        <source>The line under a day&apos;s bar, as long as what was planned.</source>
        <translation>Die Linie unter dem Balken eines Tages, so lang wie das Geplante.</translation>
    </message>
    <message>
        <source>The lines in force are of {day}, {n} weeks ago. Lines move with training; after about 8 weeks they are worth finding anew.</source>
        <translation>Die gültigen Linien sind vom {day}, {n} Wochen her. Linien wandern mit dem Training; nach etwa 8 Wochen lohnt es, sie neu zu suchen.</translation>
    </message>
    <message>
        <source>The long run fell on {weekday}</source>
        <translation>Der lange Lauf fiel auf {weekday}</translation>
    </message>
    <message>
        <source>The longest of the 30 days before was {distance}.</source>
        <translation>Der längste der 30 Tage davor war {distance}.</translation>
    </message>
    <message>
        <source>The longest run took {run}, the longest week {week}</source>
        <translation>Der längste Lauf dauerte {run}, die längste Woche {week}</translation>
    </message>
    <message>
        <source>The longest run took {time}</source>
        <translation>Der längste Lauf dauerte {time}</translation>
    </message>
    <message>
        <source>The middle grew from {before} to {after}</source>
        <translation>Die Mitte wuchs von {before} auf {after}</translation>
    </message>
    <message>
        <source>The middle shrank from {before} to {after}</source>
        <translation>Die Mitte schrumpfte von {before} auf {after}</translation>
    </message>
    <message>
        <source>The middle stayed at {share}</source>
        <translation>Die Mitte blieb bei {share}</translation>
    </message>
    <message>
        <source>The middle took {share} of {block}</source>
        <translation>Die Mitte nahm {share} von {block}</translation>
    </message>
    <message>
        <source>The middle went from {before} to {after}.</source>
        <translation>Die Mitte ging von {before} auf {after}.</translation>
    </message>
    <message>
        <source>The middle: {before} in {first}, {after} in {second}</source>
        <translation>Die Mitte: {before} in {first}, {after} in {second}</translation>
    </message>
    <message>
        <source>The most and the fastest of these weeks, each with its day.</source>
        <translation>Das Meiste und das Schnellste dieser Wochen, jeweils mit Tag.</translation>
    </message>
    <message>
        <source>The next hard day not before {free}: the last was {last}.</source>
        <translation>Der nächste harte Tag nicht vor {free}: der letzte war {last}.</translation>
    </message>
    <message>
        <source>The numbers</source>
        <translation>Die Zahlen</translation>
    </message>
    <message>
        <source>The original could not be kept: {error}. Make room on the disk that holds {folder} and add the file again.</source>
        <translation>Das Original konnte nicht aufbewahrt werden: {error}. Schaffe Platz auf dem Datenträger mit {folder} und füge die Datei noch einmal hinzu.</translation>
    </message>
    <message>
        <source>The other copy is {who}&apos;s, written {when}. Nothing of yours was changed.</source>
        <translation>Die andere Kopie ist von {who}, geschrieben {when}. Von deinem wurde nichts geändert.</translation>
    </message>
    <message>
        <source>The other copy was written {when}. Nothing of yours was changed.</source>
        <translation>Die andere Kopie wurde {when} geschrieben. Von deinem wurde nichts geändert.</translation>
    </message>
    <message>
        <source>The others left easy for more than a tenth of their time. Never truly easy is one of two common faults (common practice).</source>
        <translation>Die anderen verließen das Lockere für mehr als ein Zehntel ihrer Zeit. Nie wirklich locker ist einer von zwei häufigen Fehlern (übliche Praxis).</translation>
    </message>
    <message>
        <source>The pace on the flat that would cost as much as this hill did.</source>
        <translation>Das Tempo in der Ebene, das so viel kosten würde wie dieser Hügel.</translation>
    </message>
    <message>
        <source>The paces of both thresholds, faster is higher. A dot is a race at its pace.</source>
        <translation>Die Tempi beider Schwellen, schneller ist höher. Ein Punkt ist ein Rennen mit seinem Tempo.</translation>
    </message>
    <message>
        <source>The plan has a hard day before that: {days}. Move it, or make it easy.</source>
        <translation>Im Plan steht davor ein harter Tag: {days}. Verlegen oder locker laufen.</translation>
    </message>
    <message>
        <source>The plan has {n} hard days before that: {days}. Move or ease them.</source>
        <translation>Im Plan stehen davor {n} harte Tage: {days}. Verlegen oder locker laufen.</translation>
    </message>
    <message>
        <source>The plan holds {planned} hard, {over} more than the week asks for.</source>
        <translation>Im Plan stehen {planned} hart, {over} mehr, als die Woche verlangt.</translation>
    </message>
    <message>
        <source>The plan holds {planned} moderate, {over} more than the week asks for.</source>
        <translation>Im Plan stehen {planned} mittel, {over} mehr, als die Woche verlangt.</translation>
    </message>
    <message>
        <source>The plan of this week holds what is suggested.</source>
        <translation>Der Plan dieser Woche enthält das Vorgeschlagene.</translation>
    </message>
    <message>
        <source>The plan&apos;s hard days {one} and {two} lie closer than {n} days.</source>
        <translation>Die harten Tage {one} und {two} im Plan liegen keine {n} Tage auseinander.</translation>
    </message>
    <message>
        <source>The race&apos;s week is</source>
        <translation>Die Rennwoche ist</translation>
    </message>
    <message>
        <source>The record could not be written: {error}. Choose another place, or make room there, and write it again.</source>
        <translation>Die Akte ließ sich nicht schreiben: {error}. Wähle einen anderen Ort oder schaffe dort Platz und schreibe sie noch einmal.</translation>
    </message>
    <message>
        <source>The record is damaged at {name}.</source>
        <translation>Die Akte ist bei {name} beschädigt.</translation>
    </message>
    <message>
        <source>The record is damaged at {name}.jsonl.</source>
        <translation>Die Akte ist bei {name}.jsonl beschädigt.</translation>
    </message>
    <message>
        <source>The record is damaged: the original {name} is not as it was.</source>
        <translation>Die Akte ist beschädigt: das Original {name} ist nicht, wie es war.</translation>
    </message>
    <message>
        <source>The record is damaged: {error}.</source>
        <translation>Die Akte ist beschädigt: {error}.</translation>
    </message>
    <message>
        <source>The record is not whole: it lacks {name}.</source>
        <translation>Die Akte ist unvollständig: es fehlt {name}.</translation>
    </message>
    <message>
        <source>The recordings do not tell critical speed. {why} Run a trial, enter a race, or choose a longer span.</source>
        <translation>Die Aufzeichnungen verraten keine kritische Geschwindigkeit. {why} Laufe einen Versuch, gib ein Rennen ein oder wähle einen längeren Zeitraum.</translation>
    </message>
    <message>
        <source>The recordings do not tell the lines. Choose a longer span or another way.</source>
        <translation>Die Aufzeichnungen verraten die Linien nicht. Wähle einen längeren Zeitraum oder einen anderen Weg.</translation>
    </message>
    <message>
        <source>The rest is judged anew at the next start</source>
        <translation>Der Rest wird beim nächsten Start neu beurteilt</translation>
    </message>
    <message>
        <source>The run</source>
        <translation>Der Lauf</translation>
    </message>
    <message>
        <source>The runner&apos;s own word for a whole session on a scale from 0 to 10, known as session RPE.</source>
        <translation>Das eigene Wort des Läufers für eine ganze Einheit auf einer Skala von 0 bis 10, bekannt als Session-RPE.</translation>
    </message>
    <message>
        <source>The runs</source>
        <translation>Die Läufe</translation>
    </message>
    <message>
        <source>The runs could not be written: {error}. Choose another place, or make room there, and write them again.</source>
        <translation>Die Läufe ließen sich nicht schreiben: {error}. Wähle einen anderen Ort oder schaffe dort Platz und schreibe sie noch einmal.</translation>
    </message>
    <message>
        <source>The same, with positions, except those in a zone round home. Its middle lies aside from home, but whoever has many runs still sees which streets they begin in.</source>
        <translation>Dasselbe mit Positionen, außer denen in einem Umkreis ums Zuhause. Seine Mitte liegt neben dem Zuhause, aber wer viele Läufe hat, sieht doch, in welchen Straßen sie beginnen.</translation>
    </message>
    <message>
        <source>The screen is blank; B brings the page back</source>
        <translation>Der Bildschirm ist leer; B holt die Seite zurück</translation>
    </message>
    <message>
        <source>The session minute by minute</source>
        <translation>Die Einheit Minute für Minute</translation>
    </message>
    <message>
        <source>The sessions</source>
        <translation>Die Einheiten</translation>
    </message>
    <message>
        <source>The shares are about right only: nobody has confirmed the thresholds yet.</source>
        <translation>Die Anteile stimmen nur ungefähr: noch niemand hat die Schwellen bestätigt.</translation>
    </message>
    <message>
        <source>The spreadsheet has more than {most} parts.</source>
        <translation>Die Tabellendatei hat mehr als {most} Teile.</translation>
    </message>
    <message>
        <source>The spreadsheet has no sheet that is shown.</source>
        <translation>Die Tabellendatei hat kein sichtbares Blatt.</translation>
    </message>
    <message>
        <source>The spreadsheet is damaged: one of its parts cannot be unpacked.</source>
        <translation>Die Tabellendatei ist beschädigt: einer ihrer Teile lässt sich nicht auspacken.</translation>
    </message>
    <message>
        <source>The spreadsheet is damaged: {error}.</source>
        <translation>Die Tabellendatei ist beschädigt: {error}.</translation>
    </message>
    <message>
        <source>The store cannot be opened: {error}. Make sure that {folder} may be written and that its disk has room.</source>
        <translation>Die Ablage lässt sich nicht öffnen: {error}. Achte darauf, dass {folder} beschreibbar ist und auf dem Datenträger Platz ist.</translation>
    </message>
    <message>
        <source>The store cannot be read: {error} ({path}).</source>
        <translation>Die Ablage ist nicht lesbar: {error} ({path}).</translation>
    </message>
    <message>
        <source>The store cannot be written: {error} ({path}).</source>
        <translation>Die Ablage ist nicht beschreibbar: {error} ({path}).</translation>
    </message>
    <message>
        <source>The store could not be read: {error}.</source>
        <translation>Die Ablage war nicht lesbar: {error}.</translation>
    </message>
    <message>
        <source>The store&apos;s file cannot be opened: {error} ({path}).</source>
        <translation>Die Datei der Ablage lässt sich nicht öffnen: {error} ({path}).</translation>
    </message>
    <message>
        <source>The store&apos;s file is damaged or not a store: {path}. Your original recordings lie untouched in {originals}; rename tercet.db and add that folder to a new store. ({error})</source>
        <translation>Die Datei der Ablage ist beschädigt oder keine Ablage: {path}. Deine Originalaufzeichnungen liegen unberührt in {originals}; benenne tercet.db um und füge jenen Ordner einer neuen Ablage hinzu. ({error})</translation>
    </message>
    <message>
        <source>The store&apos;s folder cannot be made: {error} ({folder}).</source>
        <translation>Der Ordner der Ablage lässt sich nicht anlegen: {error} ({folder}).</translation>
    </message>
    <message>
        <source>The talk test</source>
        <translation>Der Sprechtest</translation>
    </message>
    <message>
        <source>The talk test and other tests</source>
        <translation>Der Sprechtest und andere Tests</translation>
    </message>
    <message>
        <source>The test is in the run of</source>
        <translation>Der Test steckt im Lauf vom</translation>
    </message>
    <message>
        <source>The text in &lt;{element}&gt; is too long.</source>
        <translation>Der Text in &lt;{element}&gt; ist zu lang.</translation>
    </message>
    <message>
        <source>The three counts differ because a session counts whole by its work though most of its minutes are easy, and because faster running covers more ground in a minute.</source>
        <translation>Die drei Zählungen weichen ab, weil eine Einheit ganz nach ihrer Belastung zählt, obwohl die meisten ihrer Minuten locker sind, und weil schnelleres Laufen in einer Minute mehr Strecke macht.</translation>
    </message>
    <message>
        <source>The thresholds themselves</source>
        <translation>Die Schwellen selbst</translation>
    </message>
    <message>
        <source>The time between two repetitions.</source>
        <translation>Die Zeit zwischen zwei Wiederholungen.</translation>
    </message>
    <message>
        <source>The times of its samples lie more than ten days apart.</source>
        <translation>Die Zeiten der Messwerte liegen mehr als zehn Tage auseinander.</translation>
    </message>
    <message>
        <source>The two thresholds. Up to LT1 lactate in the blood stays near its resting level; above LT2 it keeps rising. Each is known as a heart rate and as a pace on level ground.</source>
        <translation>Die beiden Schwellen. Bis LT1 bleibt das Laktat im Blut nahe dem Ruhewert; über LT2 steigt es immer weiter. Jede ist als Herzfrequenz und als Tempo auf ebenem Boden bekannt.</translation>
    </message>
    <message>
        <source>The week is over.</source>
        <translation>Die Woche ist vorbei.</translation>
    </message>
    <message>
        <source>The whole record, to be merged on another computer</source>
        <translation>Die ganze Akte, zum Zusammenführen auf einem anderen Rechner</translation>
    </message>
    <message>
        <source>The {kind} repetitions stayed at {pace}</source>
        <translation>Die Wiederholungen über {kind} blieben bei {pace}</translation>
    </message>
    <message>
        <source>The {kind} repetitions went from {before} to {after}</source>
        <translation>Die Wiederholungen über {kind} gingen von {before} auf {after}</translation>
    </message>
    <message>
        <source>Their clocks follow {n} different zones.</source>
        <translation>Ihre Uhren gehen nach {n} verschiedenen Zeitzonen.</translation>
    </message>
    <message>
        <source>Then</source>
        <translation>Damals</translation>
    </message>
    <message>
        <source>There are no runs yet; new ones will be judged by these.</source>
        <translation>Es gibt noch keine Läufe; neue werden danach beurteilt.</translation>
    </message>
    <message>
        <source>There is a runner named {name} already.</source>
        <translation>Einen Läufer namens {name} gibt es schon.</translation>
    </message>
    <message>
        <source>There is no run of the last half year yet.</source>
        <translation>Es gibt noch keinen Lauf aus dem letzten halben Jahr.</translation>
    </message>
    <message>
        <source>There is no such date: which one?</source>
        <translation>Dieses Datum gibt es nicht: welches?</translation>
    </message>
    <message>
        <source>There is no such file.</source>
        <translation>Diese Datei gibt es nicht.</translation>
    </message>
    <message>
        <source>There is no table in {place}. A line a step is right, such as 12.0 146 1.3.</source>
        <translation>In {place} steht keine Tabelle. Richtig ist eine Zeile je Stufe, etwa 12.0 146 1.3.</translation>
    </message>
    <message>
        <source>There is one season so far. A second one, or two blocks, can be laid beside it.</source>
        <translation>Bisher gibt es eine Saison. Eine zweite oder zwei Blöcke lassen sich daneben legen.</translation>
    </message>
    <message>
        <source>There was no hard effort of 2 to 20 minutes.</source>
        <translation>Es gab keine harte Belastung von 2 bis 20 Minuten.</translation>
    </message>
    <message>
        <source>These weeks belong to no block. Draw over some of them in the list, or Shift with up and down, then Enter, to make one there.</source>
        <translation>Diese Wochen gehören zu keinem Block. Ziehe in der Liste über einige davon, oder Umschalt mit auf und ab, dann Eingabe, damit dort einer entsteht.</translation>
    </message>
    <message>
        <source>This home is kept for the next time.</source>
        <translation>Dieses Zuhause wird für das nächste Mal behalten.</translation>
    </message>
    <message>
        <source>This is JSON text, not a recording.</source>
        <translation>Das ist JSON-Text, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is XML of another kind (&lt;{root}&gt;), not a recording.</source>
        <translation>Das ist XML anderer Art (&lt;{root}&gt;), keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a 7z archive, not a recording; unpack it first.</source>
        <translation>Das ist ein 7z-Archiv, keine Aufzeichnung; zuerst auspacken.</translation>
    </message>
    <message>
        <source>This is a PDF document, not a recording.</source>
        <translation>Das ist ein PDF-Dokument, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a blank text file, not a recording.</source>
        <translation>Das ist eine leere Textdatei, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a bzip2 file, not a recording; unpack it first.</source>
        <translation>Das ist eine bzip2-Datei, keine Aufzeichnung; zuerst auspacken.</translation>
    </message>
    <message>
        <source>This is a database, not a recording.</source>
        <translation>Das ist eine Datenbank, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a diary without a run.</source>
        <translation>Das ist ein Tagebuch ohne Lauf.</translation>
    </message>
    <message>
        <source>This is a document of another kind; save its table as xlsx or CSV and add that.</source>
        <translation>Das ist ein Dokument anderer Art; speichere seine Tabelle als xlsx oder CSV und füge das hinzu.</translation>
    </message>
    <message>
        <source>This is a folder, not a file.</source>
        <translation>Das ist ein Ordner, keine Datei.</translation>
    </message>
    <message>
        <source>This is a gzip file within a gzip file; unpack it first.</source>
        <translation>Das ist eine gzip-Datei in einer gzip-Datei; zuerst auspacken.</translation>
    </message>
    <message>
        <source>This is a picture, not a recording.</source>
        <translation>Das ist ein Bild, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a program, not a recording.</source>
        <translation>Das ist ein Programm, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a rar archive, not a recording; unpack it first.</source>
        <translation>Das ist ein rar-Archiv, keine Aufzeichnung; zuerst auspacken.</translation>
    </message>
    <message>
        <source>This is a settings file (TOML), not a recording.</source>
        <translation>Das ist eine Einstellungsdatei (TOML), keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a table as text (CSV), not a recording.</source>
        <translation>Das ist eine Tabelle als Text (CSV), keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is a zip archive in a place where it is not opened.</source>
        <translation>Das ist ein zip-Archiv an einer Stelle, an der es nicht geöffnet wird.</translation>
    </message>
    <message>
        <source>This is an empty zip archive, not a recording.</source>
        <translation>Das ist ein leeres zip-Archiv, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is an xz file, not a recording; unpack it first.</source>
        <translation>Das ist eine xz-Datei, keine Aufzeichnung; zuerst auspacken.</translation>
    </message>
    <message>
        <source>This is not a recording: no FIT, TCX or GPX, and no text either.</source>
        <translation>Das ist keine Aufzeichnung: kein FIT, TCX oder GPX und auch kein Text.</translation>
    </message>
    <message>
        <source>This is not an ordinary file.</source>
        <translation>Das ist keine gewöhnliche Datei.</translation>
    </message>
    <message>
        <source>This is plain text, not a recording.</source>
        <translation>Das ist einfacher Text, keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>This is text in UTF-16; only tables may be written so.</source>
        <translation>Das ist Text in UTF-16; nur Tabellen dürfen so geschrieben sein.</translation>
    </message>
    <message>
        <source>This is the last page</source>
        <translation>Das ist die letzte Seite</translation>
    </message>
    <message>
        <source>This is {theirs}&apos;s record, and this is {mine}&apos;s season. Nothing was changed. Open {theirs}, or add a runner, and take it in there.</source>
        <translation>Das ist die Akte von {theirs}, und hier ist die Saison von {mine}. Nichts wurde geändert. Öffne {theirs} oder füge einen Läufer hinzu und lies sie dort ein.</translation>
    </message>
    <message>
        <source>This page</source>
        <translation>Diese Seite</translation>
    </message>
    <message>
        <source>This page as picture…</source>
        <translation>Diese Seite als Bild…</translation>
    </message>
    <message>
        <source>This page needs a block with two hours of running that could be judged.</source>
        <translation>Diese Seite braucht einen Block mit zwei Stunden beurteilbarem Laufen.</translation>
    </message>
    <message>
        <source>This page needs running in both.</source>
        <translation>Diese Seite braucht Laufen in beiden.</translation>
    </message>
    <message>
        <source>This page needs three sessions with repetitions of one kind.</source>
        <translation>Diese Seite braucht drei Einheiten mit Wiederholungen einer Art.</translation>
    </message>
    <message>
        <source>This page needs thresholds with a pace.</source>
        <translation>Diese Seite braucht Schwellen mit einem Tempo.</translation>
    </message>
    <message>
        <source>This runner&apos;s whole record, with the places in its recordings</source>
        <translation>Die ganze Akte dieses Läufers, mit den Orten in ihren Aufzeichnungen</translation>
    </message>
    <message>
        <source>This store is already open in another window (process {number}): {path}</source>
        <translation>Diese Ablage ist schon in einem anderen Fenster offen (Prozess {number}): {path}</translation>
    </message>
    <message>
        <source>This store is already open in another window: {path}</source>
        <translation>Diese Ablage ist schon in einem anderen Fenster offen: {path}</translation>
    </message>
    <message>
        <source>This store was written by a newer version of Tercet ({path}). Use that version; nothing was changed.</source>
        <translation>Diese Ablage wurde von einer neueren Version von Tercet geschrieben ({path}). Verwende jene Version; nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Three and twelve minutes</source>
        <translation>Drei und zwölf Minuten</translation>
    </message>
    <message>
        <source>Thresholds</source>
        <translation>Schwellen</translation>
    </message>
    <message>
        <source>Thresholds and races</source>
        <translation>Schwellen und Rennen</translation>
    </message>
    <message>
        <source>Thu</source>
        <translation>Do</translation>
    </message>
    <message>
        <source>Thursday</source>
        <translation>Donnerstag</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Time in each shade</source>
        <translation>Zeit in jeder Stufe</translation>
    </message>
    <message>
        <source>Time of the race</source>
        <translation>Zeit des Rennens</translation>
    </message>
    <message>
        <source>Time over intensity in {block}.</source>
        <translation>Zeit über der Intensität in {block}.</translation>
    </message>
    <message>
        <source>Time over intensity; both lines enclose the same area.</source>
        <translation>Zeit über der Intensität; beide Linien umschließen dieselbe Fläche.</translation>
    </message>
    <message>
        <source>Time zone</source>
        <translation>Zeitzone</translation>
    </message>
    <message>
        <source>Time zone that they were run in</source>
        <translation>Zeitzone, in der gelaufen wurde</translation>
    </message>
    <message>
        <source>Title</source>
        <translation>Titel</translation>
    </message>
    <message>
        <source>Title of this page</source>
        <translation>Titel dieser Seite</translation>
    </message>
    <message>
        <source>To go</source>
        <translation>Noch</translation>
    </message>
    <message>
        <source>To {month} {year}</source>
        <translation>Bis {month} {year}</translation>
    </message>
    <message>
        <source>Too fast from the start</source>
        <translation>Von Anfang an zu schnell</translation>
    </message>
    <message>
        <source>Too short a way to know its hills: left out.</source>
        <translation>Ein zu kurzer Weg, um seine Hügel zu kennen: weggelassen.</translation>
    </message>
    <message>
        <source>Top speed of a sprint, minutes per {unit}</source>
        <translation>Höchste Sprintgeschwindigkeit, Minuten je {unit}</translation>
    </message>
    <message>
        <source>Top speed {pace}</source>
        <translation>Höchstgeschwindigkeit {pace}</translation>
    </message>
    <message>
        <source>Top speed, as a pace</source>
        <translation>Höchstgeschwindigkeit, als Tempo</translation>
    </message>
    <message>
        <source>Totals, and how they came about</source>
        <translation>Summen, und wie sie zustande kamen</translation>
    </message>
    <message>
        <source>Trace of the session</source>
        <translation>Kurve der Einheit</translation>
    </message>
    <message>
        <source>Track run</source>
        <translation>Bahnlauf</translation>
    </message>
    <message>
        <source>Trade time in the middle for a few short, fast repetitions.</source>
        <translation>Tausche Zeit in der Mitte gegen einige kurze, schnelle Wiederholungen.</translation>
    </message>
    <message>
        <source>Trail run</source>
        <translation>Traillauf</translation>
    </message>
    <message>
        <source>Treadmill belt speed…</source>
        <translation>Bandgeschwindigkeit…</translation>
    </message>
    <message>
        <source>Treadmill run</source>
        <translation>Laufbandlauf</translation>
    </message>
    <message>
        <source>Tue</source>
        <translation>Di</translation>
    </message>
    <message>
        <source>Tuesday</source>
        <translation>Dienstag</translation>
    </message>
    <message>
        <source>Twice as long</source>
        <translation>Doppelt so lang</translation>
    </message>
    <message>
        <source>Two blocks, back from their last week</source>
        <translation>Zwei Blöcke, von ihrer letzten Woche zurück</translation>
    </message>
    <message>
        <source>Two columns are named {role}: choose one of them.</source>
        <translation>Zwei Spalten heißen {role}: wähle eine davon.</translation>
    </message>
    <message>
        <source>Two copies say different things</source>
        <translation>Zwei Kopien sagen Verschiedenes</translation>
    </message>
    <message>
        <source>Two distances: which one?</source>
        <translation>Zwei Strecken: welche?</translation>
    </message>
    <message>
        <source>Two paces: which one?</source>
        <translation>Zwei Tempi: welches?</translation>
    </message>
    <message>
        <source>Two runs on one day.</source>
        <translation>Zwei Läufe an einem Tag.</translation>
    </message>
    <message>
        <source>Two seasons, back from the race</source>
        <translation>Zwei Saisons, vom Rennen zurück</translation>
    </message>
    <message>
        <source>Two seasons, years</source>
        <translation>Zwei Saisons, Jahre</translation>
    </message>
    <message>
        <source>Two sessions that are one run</source>
        <translation>Zwei Einheiten, die ein Lauf sind</translation>
    </message>
    <message>
        <source>Two times: which one?</source>
        <translation>Zwei Zeiten: welche?</translation>
    </message>
    <message>
        <source>Type a paper log</source>
        <translation>Papiertagebuch tippen</translation>
    </message>
    <message>
        <source>Type home as two numbers in degrees, such as 45.123 7.456, or take the place where most runs start.</source>
        <translation>Tippe das Zuhause als zwei Zahlen in Grad, etwa 45.123 7.456, oder nimm den Ort, an dem die meisten Läufe beginnen.</translation>
    </message>
    <message>
        <source>Type it again</source>
        <translation>Noch einmal eingeben</translation>
    </message>
    <message>
        <source>Type or paste the steps: speed or pace, heart rate, lactate. At least five, each faster than the one before.</source>
        <translation>Tippe oder füge die Stufen ein: Geschwindigkeit oder Tempo, Herzfrequenz, Laktat. Mindestens fünf, jede schneller als die vorige.</translation>
    </message>
    <message>
        <source>Typed</source>
        <translation>Getippt</translation>
    </message>
    <message>
        <source>Under this name: back from race day, where a week is planned. Review, in the same row, makes pages of the season to show or to print.</source>
        <translation>Unter diesem Namen: vom Renntag zurück, dort wird eine Woche geplant. „Rückblick“ in derselben Zeile macht Seiten der Saison zum Zeigen oder Drucken.</translation>
    </message>
    <message>
        <source>Understood</source>
        <translation>Verstanden</translation>
    </message>
    <message>
        <source>Understood, one row a session</source>
        <translation>Verstanden, eine Zeile je Einheit</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Undo: {step}</source>
        <translation>Rückgängig: {step}</translation>
    </message>
    <message>
        <source>Uneven</source>
        <translation>Ungleichmäßig</translation>
    </message>
    <message>
        <source>Unit of the build-up</source>
        <translation>Einheit des Verlaufs</translation>
    </message>
    <message>
        <source>Unjudged</source>
        <translation>Nicht beurteilt</translation>
    </message>
    <message>
        <source>Unpacked it is larger than {mb} MB.</source>
        <translation>Ausgepackt ist sie größer als {mb} MB.</translation>
    </message>
    <message>
        <source>Unpacked it is {ratio} times larger, as no recording is.</source>
        <translation>Ausgepackt ist sie {ratio}-mal größer, wie es keine Aufzeichnung ist.</translation>
    </message>
    <message>
        <source>Unplanned</source>
        <translation>Ungeplant</translation>
    </message>
    <message>
        <source>Up to, of today&apos;s volume</source>
        <translation>Bis zu, vom heutigen Umfang</translation>
    </message>
    <message>
        <source>Up {percent} %</source>
        <translation>{percent} % mehr</translation>
    </message>
    <message>
        <source>Uptake</source>
        <translation>Aufnahme</translation>
    </message>
    <message>
        <source>Use a race</source>
        <translation>Rennen verwenden</translation>
    </message>
    <message>
        <source>Use from {day}</source>
        <translation>Ab {day} verwenden</translation>
    </message>
    <message>
        <source>Use them</source>
        <translation>Verwenden</translation>
    </message>
    <message>
        <source>Use these</source>
        <translation>Diese verwenden</translation>
    </message>
    <message>
        <source>Usual rows</source>
        <translation>Übliche Zeilen</translation>
    </message>
    <message>
        <source>View</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>Volume, long runs and rests</source>
        <translation>Umfang, lange Läufe und Ruhe</translation>
    </message>
    <message>
        <source>Walking</source>
        <translation>Gehen</translation>
    </message>
    <message>
        <source>Walking or jogging easier between repetitions keeps recoveries out of the middle.</source>
        <translation>Zwischen den Wiederholungen zu gehen oder lockerer zu traben hält die Pausen aus der Mitte heraus.</translation>
    </message>
    <message>
        <source>Wanted easy, per cent</source>
        <translation>Locker soll, Prozent</translation>
    </message>
    <message>
        <source>Wanted hard, per cent</source>
        <translation>Hart soll, Prozent</translation>
    </message>
    <message>
        <source>Wanted moderate, per cent</source>
        <translation>Mittel soll, Prozent</translation>
    </message>
    <message>
        <source>Wanted shares are each block&apos;s own. Order is by race day, then by name, never by a number.</source>
        <translation>Das Soll gilt für jeden Block selbst. Geordnet nach Renntag, dann nach Name, nie nach einer Zahl.</translation>
    </message>
    <message>
        <source>Wanted shares, in % of</source>
        <translation>Gewünschte Anteile, in % von</translation>
    </message>
    <message>
        <source>Wanted: {easy} easy, {moderate} moderate, {hard} hard</source>
        <translation>Soll: {easy} locker, {moderate} mittel, {hard} hart</translation>
    </message>
    <message>
        <source>Warm up for a quarter of an hour, then run thirty minutes as evenly and as fast as you can keep up, alone, on level ground. The mean pace is near LT2; the mean heart rate of the last twenty minutes is near LT2 by heart rate. Run easily before and after, so that the trial is recognised.</source>
        <translation>Laufe dich eine Viertelstunde ein, dann laufe dreißig Minuten so gleichmäßig und so schnell du durchhältst, allein, auf ebenem Boden. Das mittlere Tempo liegt nahe LT2; die mittlere Herzfrequenz der letzten zwanzig Minuten liegt nahe LT2 nach Herzfrequenz. Laufe davor und danach locker, damit der Versuch erkannt wird.</translation>
    </message>
    <message>
        <source>Watch a folder</source>
        <translation>Ordner beobachten</translation>
    </message>
    <message>
        <source>Watch a folder…</source>
        <translation>Ordner beobachten…</translation>
    </message>
    <message>
        <source>Watched: {folder}</source>
        <translation>Beobachtet: {folder}</translation>
    </message>
    <message>
        <source>Ways to thresholds</source>
        <translation>Wege zu Schwellen</translation>
    </message>
    <message>
        <source>Wed</source>
        <translation>Mi</translation>
    </message>
    <message>
        <source>Wednesday</source>
        <translation>Mittwoch</translation>
    </message>
    <message>
        <source>Week</source>
        <translation>Woche</translation>
    </message>
    <message>
        <source>Week by week</source>
        <translation>Woche für Woche</translation>
    </message>
    <message>
        <source>Week of</source>
        <translation>Woche vom</translation>
    </message>
    <message>
        <source>Week of {day}</source>
        <translation>Woche vom {day}</translation>
    </message>
    <message>
        <source>Week of {day}, nothing run</source>
        <translation>Woche vom {day}, nichts gelaufen</translation>
    </message>
    <message>
        <source>Week of {day}, {hours} run</source>
        <translation>Woche vom {day}, {hours} gelaufen</translation>
    </message>
    <message>
        <source>Week volume</source>
        <translation>Wochenumfang</translation>
    </message>
    <message>
        <source>Weeks</source>
        <translation>Wochen</translation>
    </message>
    <message>
        <source>Weeks counted back from each race, easy next to the middle, hard outermost.</source>
        <translation>Wochen von jedem Rennen zurückgezählt, Lockeres neben der Mitte, Hartes ganz außen.</translation>
    </message>
    <message>
        <source>Weeks counted back: {one}</source>
        <translation>Wochen zurückgezählt: {one}</translation>
    </message>
    <message>
        <source>Weeks counted back: {one} beside {other}</source>
        <translation>Wochen zurückgezählt: {one} neben {other}</translation>
    </message>
    <message>
        <source>Weeks grow at most</source>
        <translation>Wochen wachsen höchstens</translation>
    </message>
    <message>
        <source>Weeks grow no higher than</source>
        <translation>Wochen wachsen höchstens bis</translation>
    </message>
    <message>
        <source>Weeks of the season</source>
        <translation>Wochen der Saison</translation>
    </message>
    <message>
        <source>Weeks of the season as a table</source>
        <translation>Wochen der Saison als Tabelle</translation>
    </message>
    <message>
        <source>What differs</source>
        <translation>Was sich unterscheidet</translation>
    </message>
    <message>
        <source>What does each column hold?</source>
        <translation>Was steht in jeder Spalte?</translation>
    </message>
    <message>
        <source>What does it mean? How hard was it?</source>
        <translation>Was heißt das? Wie hart war es?</translation>
    </message>
    <message>
        <source>What is in this archive</source>
        <translation>Was in diesem Archiv ist</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>What stands out</source>
        <translation>Was auffällt</translation>
    </message>
    <message>
        <source>What they were</source>
        <translation>Was sie waren</translation>
    </message>
    <message>
        <source>What this runner&apos;s own words mean, such as T for threshold. A single letter counts as typed, longer words in capitals or not. Runs that were kept stay as they are.</source>
        <translation>Was die eigenen Worte dieses Läufers bedeuten, etwa T für Schwelle. Ein einzelner Buchstabe gilt wie getippt, längere Wörter groß oder klein geschrieben. Behaltene Läufe bleiben, wie sie sind.</translation>
    </message>
    <message>
        <source>What this stretch was</source>
        <translation>Was dieser Abschnitt war</translation>
    </message>
    <message>
        <source>What this would change</source>
        <translation>Was das ändern würde</translation>
    </message>
    <message>
        <source>What to do next</source>
        <translation>Was als Nächstes zu tun ist</translation>
    </message>
    <message>
        <source>What to do with the chosen sessions</source>
        <translation>Was mit den gewählten Einheiten geschehen soll</translation>
    </message>
    <message>
        <source>What to say beside this page</source>
        <translation>Was zu dieser Seite zu sagen ist</translation>
    </message>
    <message>
        <source>What {column} holds</source>
        <translation>Was {column} enthält</translation>
    </message>
    <message>
        <source>When did the run start?</source>
        <translation>Wann begann der Lauf?</translation>
    </message>
    <message>
        <source>When the run started</source>
        <translation>Wann der Lauf begann</translation>
    </message>
    <message>
        <source>Where from</source>
        <translation>Woher</translation>
    </message>
    <message>
        <source>Where most runs start</source>
        <translation>Wo die meisten Läufe beginnen</translation>
    </message>
    <message>
        <source>Where the middle came from</source>
        <translation>Woher die Mitte kam</translation>
    </message>
    <message>
        <source>Where these values come from</source>
        <translation>Woher diese Werte kommen</translation>
    </message>
    <message>
        <source>Where to put the folder of tables</source>
        <translation>Wohin der Ordner mit den Tabellen soll</translation>
    </message>
    <message>
        <source>Which date?</source>
        <translation>Welches Datum?</translation>
    </message>
    <message>
        <source>Which day? Begin the line with it.</source>
        <translation>Welcher Tag? Beginne die Zeile damit.</translation>
    </message>
    <message>
        <source>Which files to list</source>
        <translation>Welche Dateien zeigen</translation>
    </message>
    <message>
        <source>Which pace?</source>
        <translation>Welches Tempo?</translation>
    </message>
    <message>
        <source>Which runs are judged by them</source>
        <translation>Welche Läufe danach beurteilt werden</translation>
    </message>
    <message>
        <source>Which week? Write its date above.</source>
        <translation>Welche Woche? Schreibe ihr Datum darüber.</translation>
    </message>
    <message>
        <source>Which year?</source>
        <translation>Welches Jahr?</translation>
    </message>
    <message>
        <source>Which year? It is asked above.</source>
        <translation>Welches Jahr? Es wird oben gefragt.</translation>
    </message>
    <message>
        <source>Whole season</source>
        <translation>Ganze Saison</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>With pain, illness, dizziness or chest signs stop and ask a doctor; this program gives no medical advice.</source>
        <translation>Bei Schmerzen, Krankheit, Schwindel oder Zeichen in der Brust aufhören und ärztlichen Rat holen; dieses Programm gibt keinen medizinischen Rat.</translation>
    </message>
    <message>
        <source>Word</source>
        <translation>Wort</translation>
    </message>
    <message>
        <source>Words and what they mean</source>
        <translation>Wörter und was sie bedeuten</translation>
    </message>
    <message>
        <source>Words of the review from {day}</source>
        <translation>Worte des Rückblicks vom {day}</translation>
    </message>
    <message>
        <source>Worth a look</source>
        <translation>Einen Blick wert</translation>
    </message>
    <message>
        <source>Write the next block</source>
        <translation>Nächsten Block schreiben</translation>
    </message>
    <message>
        <source>Write the plan as a calendar file</source>
        <translation>Plan als Kalenderdatei schreiben</translation>
    </message>
    <message>
        <source>Write the plan as a calendar file…</source>
        <translation>Plan als Kalenderdatei schreiben…</translation>
    </message>
    <message>
        <source>Write the plan to a calendar, or read one</source>
        <translation>Plan in einen Kalender schreiben oder einen lesen</translation>
    </message>
    <message>
        <source>Write {reading}</source>
        <translation>{reading} schreiben</translation>
    </message>
    <message>
        <source>Writes into the plan. {what}</source>
        <translation>Schreibt in den Plan. {what}</translation>
    </message>
    <message>
        <source>Writing {done} of {whole}   {now}</source>
        <translation>Schreibt {done} von {whole}   {now}</translation>
    </message>
    <message>
        <source>Writing {file}</source>
        <translation>Schreibt {file}</translation>
    </message>
    <message>
        <source>Writing …</source>
        <translation>Schreibt …</translation>
    </message>
    <message>
        <source>Written 44:10, or 1:35:20 with hours. Both lines come from it.</source>
        <translation>Geschrieben 44:10, oder 1:35:20 mit Stunden. Beide Linien folgen daraus.</translation>
    </message>
    <message>
        <source>Written: {file}</source>
        <translation>Geschrieben: {file}</translation>
    </message>
    <message>
        <source>Years</source>
        <translation>Jahre</translation>
    </message>
    <message>
        <source>Yes, {reading}</source>
        <translation>Ja, {reading}</translation>
    </message>
    <message>
        <source>Your season</source>
        <translation>Deine Saison</translation>
    </message>
    <message>
        <source>[[{name}]] entry {number}: {error}</source>
        <translation>[[{name}]] Eintrag {number}: {error}</translation>
    </message>
    <message>
        <source>a belt runs at {low} to {high} m/s: {speed}</source>
        <translation>ein Band läuft mit {low} bis {high} m/s: {speed}</translation>
    </message>
    <message>
        <source>a channel that is not whole</source>
        <translation>ein unvollständiger Kanal</translation>
    </message>
    <message>
        <source>a clock that does not rise</source>
        <translation>eine Uhr, die nicht steigt</translation>
    </message>
    <message>
        <source>a folder</source>
        <translation>ein Ordner</translation>
    </message>
    <message>
        <source>a folder would be added</source>
        <translation>ein Ordner würde hinzugefügt</translation>
    </message>
    <message>
        <source>a number alone is</source>
        <translation>eine Zahl allein heißt</translation>
    </message>
    <message>
        <source>a piece of no file</source>
        <translation>ein Stück ohne Datei</translation>
    </message>
    <message>
        <source>a piece of no time</source>
        <translation>ein Stück ohne Zeit</translation>
    </message>
    <message>
        <source>a piece without samples and words</source>
        <translation>ein Stück ohne Messwerte und Worte</translation>
    </message>
    <message>
        <source>a piece without samples, or with too many</source>
        <translation>ein Stück ohne Messwerte oder mit zu vielen</translation>
    </message>
    <message>
        <source>a run neither meant nor not</source>
        <translation>ein Lauf, weder beabsichtigt noch nicht</translation>
    </message>
    <message>
        <source>a run without {missing}</source>
        <translation>ein Lauf ohne {missing}</translation>
    </message>
    <message>
        <source>a session without samples can be neither joined nor cut</source>
        <translation>eine Einheit ohne Messwerte lässt sich weder verbinden noch teilen</translation>
    </message>
    <message>
        <source>a stretch is one of {letters}, not {letter}</source>
        <translation>ein Abschnitt ist einer von {letters}, nicht {letter}</translation>
    </message>
    <message>
        <source>a usual maximal heart rate, none was recorded</source>
        <translation>eine übliche maximale Herzfrequenz, keine wurde aufgezeichnet</translation>
    </message>
    <message>
        <source>about</source>
        <translation>etwa</translation>
    </message>
    <message>
        <source>about {amount}</source>
        <translation>etwa {amount}</translation>
    </message>
    <message>
        <source>about {number}</source>
        <translation>etwa {number}</translation>
    </message>
    <message>
        <source>about {n} min</source>
        <translation>etwa {n} min</translation>
    </message>
    <message>
        <source>about {n} s</source>
        <translation>etwa {n} s</translation>
    </message>
    <message>
        <source>about {time}</source>
        <translation>etwa {time}</translation>
    </message>
    <message>
        <source>about {time} easy</source>
        <translation>etwa {time} locker</translation>
    </message>
    <message>
        <source>about {time} hard</source>
        <translation>etwa {time} hart</translation>
    </message>
    <message>
        <source>about {time} moderate</source>
        <translation>etwa {time} mittel</translation>
    </message>
    <message>
        <source>about {value}</source>
        <translation>etwa {value}</translation>
    </message>
    <message>
        <source>about {value} ({low} to {high})</source>
        <translation>etwa {value} ({low} bis {high})</translation>
    </message>
    <message>
        <source>about, {source}</source>
        <translation>ungefähr, {source}</translation>
    </message>
    <message>
        <source>age {years}</source>
        <translation>Alter {years}</translation>
    </message>
    <message>
        <source>all runs</source>
        <translation>alle Läufe</translation>
    </message>
    <message>
        <source>already above {level} mmol/L in the first step</source>
        <translation>schon in der ersten Stufe über {level} mmol/L</translation>
    </message>
    <message>
        <source>already here, from paper</source>
        <translation>schon da, vom Papier</translation>
    </message>
    <message>
        <source>already here, recorded at {clock}</source>
        <translation>schon da, aufgezeichnet um {clock}</translation>
    </message>
    <message>
        <source>altitude</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>altitude, feet</source>
        <translation>Höhe, Fuß</translation>
    </message>
    <message>
        <source>altitude, metres</source>
        <translation>Höhe, Meter</translation>
    </message>
    <message>
        <source>am</source>
        <translation>vormittags</translation>
    </message>
    <message>
        <source>an effort outside 0 to 10</source>
        <translation>eine Anstrengung außerhalb 0 bis 10</translation>
    </message>
    <message>
        <source>and {n} more line</source>
        <translation>und {n} weitere Zeile</translation>
    </message>
    <message>
        <source>and {n} more lines</source>
        <translation>und {n} weitere Zeilen</translation>
    </message>
    <message>
        <source>another sport</source>
        <translation>eine andere Sportart</translation>
    </message>
    <message>
        <source>asked about</source>
        <translation>gefragt</translation>
    </message>
    <message>
        <source>at 25 °C</source>
        <translation>bei 25 °C</translation>
    </message>
    <message>
        <source>at most five, weightiest first</source>
        <translation>höchstens fünf, das Gewichtigste zuerst</translation>
    </message>
    <message>
        <source>at most {time} hard</source>
        <translation>höchstens {time} hart</translation>
    </message>
    <message>
        <source>at rest</source>
        <translation>in Ruhe</translation>
    </message>
    <message>
        <source>away</source>
        <translation>verreist</translation>
    </message>
    <message>
        <source>bar cut, hours beside it</source>
        <translation>Balken gekürzt, Stunden daneben</translation>
    </message>
    <message>
        <source>base</source>
        <translation>Grundlage</translation>
    </message>
    <message>
        <source>baseline + 0.5</source>
        <translation>Grundwert + 0,5</translation>
    </message>
    <message>
        <source>baseline + 1.0</source>
        <translation>Grundwert + 1,0</translation>
    </message>
    <message>
        <source>best efforts recorded</source>
        <translation>beste aufgezeichnete Belastungen</translation>
    </message>
    <message>
        <source>between polarised and pyramidal</source>
        <translation>zwischen polarisiert und pyramidal</translation>
    </message>
    <message>
        <source>between {lt1} and {lt2}</source>
        <translation>zwischen {lt1} und {lt2}</translation>
    </message>
    <message>
        <source>block</source>
        <translation>Block</translation>
    </message>
    <message>
        <source>block so far, hours</source>
        <translation>Block bisher, Stunden</translation>
    </message>
    <message>
        <source>blocks</source>
        <translation>Blöcke</translation>
    </message>
    <message>
        <source>both pieces must have some seconds: choose another place</source>
        <translation>beide Stücke brauchen einige Sekunden: wähle eine andere Stelle</translation>
    </message>
    <message>
        <source>busy</source>
        <translation>viel zu tun</translation>
    </message>
    <message>
        <source>by</source>
        <translation>nach</translation>
    </message>
    <message>
        <source>by thresholds that you gave</source>
        <translation>nach Schwellen, die du angegeben hast</translation>
    </message>
    <message>
        <source>cadence</source>
        <translation>Schrittfrequenz</translation>
    </message>
    <message>
        <source>cannot be read</source>
        <translation>nicht lesbar</translation>
    </message>
    <message>
        <source>cause</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>caution {number}</source>
        <translation>Vorsicht {number}</translation>
    </message>
    <message>
        <source>change</source>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>climb</source>
        <translation>Anstieg</translation>
    </message>
    <message>
        <source>climb, feet</source>
        <translation>Anstieg, Fuß</translation>
    </message>
    <message>
        <source>climb, metres</source>
        <translation>Anstieg, Meter</translation>
    </message>
    <message>
        <source>coach</source>
        <translation>Trainer</translation>
    </message>
    <message>
        <source>column {n}</source>
        <translation>Spalte {n}</translation>
    </message>
    <message>
        <source>common arc</source>
        <translation>üblicher Bogen</translation>
    </message>
    <message>
        <source>cool-down</source>
        <translation>Auslaufen</translation>
    </message>
    <message>
        <source>count</source>
        <translation>Anzahl</translation>
    </message>
    <message>
        <source>current block</source>
        <translation>laufender Block</translation>
    </message>
    <message>
        <source>cut</source>
        <translation>geteilt</translation>
    </message>
    <message>
        <source>cycling</source>
        <translation>Radfahren</translation>
    </message>
    <message>
        <source>d MMM</source>
        <comment>pattern of a date, as Qt reads it</comment>
        <translation>d. MMM</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <comment>format of a date</comment>
        <translation>d. MMM yyyy</translation>
    </message>
    <message>
        <source>d MMM yyyy  HH:mm</source>
        <comment>format of a date</comment>
        <translation>d. MMM yyyy  HH:mm</translation>
    </message>
    <message>
        <source>d MMM yyyy  HH:mm</source>
        <comment>pattern of a date, as Qt reads it</comment>
        <translation>d. MMM yyyy  HH:mm</translation>
    </message>
    <message>
        <source>d MMMM yyyy</source>
        <comment>pattern of a date, as Qt reads it</comment>
        <translation>d. MMMM yyyy</translation>
    </message>
    <message>
        <source>date and time</source>
        <translation>Datum und Uhrzeit</translation>
    </message>
    <message>
        <source>date and time, 12/31</source>
        <translation>Datum und Uhrzeit, 12/31</translation>
    </message>
    <message>
        <source>date and time, 31/12</source>
        <translation>Datum und Uhrzeit, 31/12</translation>
    </message>
    <message>
        <source>day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>day off</source>
        <translation>freier Tag</translation>
    </message>
    <message>
        <source>day off, note: {note}</source>
        <translation>freier Tag, Notiz: {note}</translation>
    </message>
    <message>
        <source>day, 12/31</source>
        <translation>Tag, 12/31</translation>
    </message>
    <message>
        <source>day, 2026-12-31</source>
        <translation>Tag, 2026-12-31</translation>
    </message>
    <message>
        <source>day, 26-12-31</source>
        <translation>Tag, 26-12-31</translation>
    </message>
    <message>
        <source>day, 31/12</source>
        <translation>Tag, 31/12</translation>
    </message>
    <message>
        <source>days</source>
        <translation>Tage</translation>
    </message>
    <message>
        <source>days of running without one off</source>
        <translation>Lauftage ohne freien Tag</translation>
    </message>
    <message>
        <source>days off</source>
        <translation>freie Tage</translation>
    </message>
    <message>
        <source>days run</source>
        <translation>gelaufene Tage</translation>
    </message>
    <message>
        <source>days without</source>
        <translation>Tage ohne</translation>
    </message>
    <message>
        <source>dddd d MMMM</source>
        <comment>pattern of a date, as Qt reads it</comment>
        <translation>dddd, d. MMMM</translation>
    </message>
    <message>
        <source>distance</source>
        <translation>Strecke</translation>
    </message>
    <message>
        <source>distance in kilometres</source>
        <translation>Strecke in Kilometern</translation>
    </message>
    <message>
        <source>distance in miles</source>
        <translation>Strecke in Meilen</translation>
    </message>
    <message>
        <source>distance, km</source>
        <translation>Strecke, km</translation>
    </message>
    <message>
        <source>distance, metres</source>
        <translation>Strecke, Meter</translation>
    </message>
    <message>
        <source>distance, miles</source>
        <translation>Strecke, Meilen</translation>
    </message>
    <message>
        <source>distance_m should be a positive number of metres</source>
        <translation>distance_m soll eine positive Zahl in Metern sein</translation>
    </message>
    <message>
        <source>done</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>easier every</source>
        <translation>leichter alle</translation>
    </message>
    <message>
        <source>easy</source>
        <translation>locker</translation>
    </message>
    <message>
        <source>easy about {time}</source>
        <translation>locker etwa {time}</translation>
    </message>
    <message>
        <source>easy at</source>
        <translation>locker bei</translation>
    </message>
    <message>
        <source>easy by distance</source>
        <translation>locker nach Strecke</translation>
    </message>
    <message>
        <source>easy in hand</source>
        <translation>Lockeres voraus</translation>
    </message>
    <message>
        <source>easy in the season, wanted {share}</source>
        <translation>locker in der Saison, Soll {share}</translation>
    </message>
    <message>
        <source>easy in {stretch}, wanted {share}</source>
        <translation>locker in {stretch}, Soll {share}</translation>
    </message>
    <message>
        <source>easy run</source>
        <translation>lockerer Lauf</translation>
    </message>
    <message>
        <source>easy running</source>
        <translation>lockeres Laufen</translation>
    </message>
    <message>
        <source>easy share</source>
        <translation>Anteil locker</translation>
    </message>
    <message>
        <source>easy short</source>
        <translation>Lockeres fehlt</translation>
    </message>
    <message>
        <source>easy wanted</source>
        <translation>locker soll</translation>
    </message>
    <message>
        <source>easy {low} to {high}</source>
        <translation>locker {low} bis {high}</translation>
    </message>
    <message>
        <source>easy {run} of {wanted}</source>
        <translation>locker {run} von {wanted}</translation>
    </message>
    <message>
        <source>easy {run} of {wanted} {unit}</source>
        <translation>locker {run} von {wanted} {unit}</translation>
    </message>
    <message>
        <source>easy {time}</source>
        <translation>locker {time}</translation>
    </message>
    <message>
        <source>easy {value}</source>
        <translation>locker {value}</translation>
    </message>
    <message>
        <source>easy_target and moderate_target make more than 1</source>
        <translation>easy_target und moderate_target ergeben mehr als 1</translation>
    </message>
    <message>
        <source>easy_target should lie between 0.5 and 1</source>
        <translation>easy_target soll zwischen 0.5 und 1 liegen</translation>
    </message>
    <message>
        <source>effort</source>
        <comment>word of a search</comment>
        <translation>Anstrengung</translation>
    </message>
    <message>
        <source>effort is said on a scale from 0 to 10</source>
        <translation>Anstrengung wird auf einer Skala von 0 bis 10 angegeben</translation>
    </message>
    <message>
        <source>effort said</source>
        <translation>empfundene Anstrengung</translation>
    </message>
    <message>
        <source>effort said {effort} of 10</source>
        <translation>empfundene Anstrengung {effort} von 10</translation>
    </message>
    <message>
        <source>effort said, 0 to 10</source>
        <translation>empfundene Anstrengung, 0 bis 10</translation>
    </message>
    <message>
        <source>end</source>
        <translation>Ende</translation>
    </message>
    <message>
        <source>end of the set</source>
        <translation>Ende der Serie</translation>
    </message>
    <message>
        <source>equal to</source>
        <translation>gleichwertig</translation>
    </message>
    <message>
        <source>every step needs its length, or none</source>
        <translation>jede Stufe braucht ihre Länge, oder keine</translation>
    </message>
    <message>
        <source>every step needs its speed and its lactate</source>
        <translation>jede Stufe braucht ihre Geschwindigkeit und ihr Laktat</translation>
    </message>
    <message>
        <source>faster than {pace}</source>
        <translation>schneller als {pace}</translation>
    </message>
    <message>
        <source>figure</source>
        <translation>Zahl</translation>
    </message>
    <message>
        <source>first week</source>
        <translation>erste Woche</translation>
    </message>
    <message>
        <source>fixed 2.0</source>
        <translation>fest 2,0</translation>
    </message>
    <message>
        <source>fixed 4.0</source>
        <translation>fest 4,0</translation>
    </message>
    <message>
        <source>flat out</source>
        <translation>mit aller Kraft</translation>
    </message>
    <message>
        <source>for</source>
        <comment>what a block is for</comment>
        <translation>für</translation>
    </message>
    <message>
        <source>from</source>
        <translation>von</translation>
    </message>
    <message>
        <source>from and to</source>
        <translation>von und bis</translation>
    </message>
    <message>
        <source>from runs</source>
        <translation>aus Läufen</translation>
    </message>
    <message>
        <source>from that day on only</source>
        <translation>nur ab diesem Tag</translation>
    </message>
    <message>
        <source>from {day}</source>
        <translation>ab {day}</translation>
    </message>
    <message>
        <source>give LT1 and LT2 as heart rate, as speed, or as power</source>
        <translation>gib LT1 und LT2 als Herzfrequenz, als Tempo oder als Leistung an</translation>
    </message>
    <message>
        <source>grey: where the line lies in 9 of 10 cases</source>
        <translation>grau: wo die Linie in 9 von 10 Fällen liegt</translation>
    </message>
    <message>
        <source>grows at most</source>
        <translation>wächst höchstens</translation>
    </message>
    <message>
        <source>h</source>
        <translation>h</translation>
    </message>
    <message>
        <source>h:min</source>
        <translation>h:min</translation>
    </message>
    <message>
        <source>hard</source>
        <translation>hart</translation>
    </message>
    <message>
        <source>hard about {time}</source>
        <translation>hart etwa {time}</translation>
    </message>
    <message>
        <source>hard days</source>
        <translation>harte Tage</translation>
    </message>
    <message>
        <source>hard days closer than a day</source>
        <translation>harte Tage näher als ein Tag</translation>
    </message>
    <message>
        <source>hard days closer than {n} days</source>
        <translation>harte Tage näher als {n} Tage</translation>
    </message>
    <message>
        <source>hard from {value}</source>
        <translation>hart ab {value}</translation>
    </message>
    <message>
        <source>hard in {n} weeks</source>
        <translation>hart in {n} Wochen</translation>
    </message>
    <message>
        <source>hard running by length of repetition</source>
        <translation>hartes Laufen nach Länge der Wiederholung</translation>
    </message>
    <message>
        <source>hard {low} to {high}</source>
        <translation>hart {low} bis {high}</translation>
    </message>
    <message>
        <source>hard {run} of {wanted}</source>
        <translation>hart {run} von {wanted}</translation>
    </message>
    <message>
        <source>hard {run} of {wanted} {unit}</source>
        <translation>hart {run} von {wanted} {unit}</translation>
    </message>
    <message>
        <source>hard {time}</source>
        <translation>hart {time}</translation>
    </message>
    <message>
        <source>hard {value}</source>
        <translation>hart {value}</translation>
    </message>
    <message>
        <source>hardly any time</source>
        <translation>kaum Zeit</translation>
    </message>
    <message>
        <source>heart rate</source>
        <translation>Herzfrequenz</translation>
    </message>
    <message>
        <source>heart rate /min</source>
        <translation>Herzfrequenz /min</translation>
    </message>
    <message>
        <source>heart rate far from what the pace asks, left out: {n} s</source>
        <translation>Herzfrequenz weit weg von dem, was das Tempo verlangt, weggelassen: {n} s</translation>
    </message>
    <message>
        <source>heart rate following the steps, left out: {n} s</source>
        <translation>Herzfrequenz folgt den Schritten, weggelassen: {n} s</translation>
    </message>
    <message>
        <source>heart rate frozen, left out: {n} s</source>
        <translation>Herzfrequenz eingefroren, weggelassen: {n} s</translation>
    </message>
    <message>
        <source>heart rate in steady running</source>
        <translation>Herzfrequenz im gleichmäßigen Laufen</translation>
    </message>
    <message>
        <source>heart rate missing for moments, bridged: {n} s</source>
        <translation>Herzfrequenz für Augenblicke nicht da, überbrückt: {n} s</translation>
    </message>
    <message>
        <source>heart rate of a false start, left out: {n} s</source>
        <translation>Herzfrequenz eines Fehlstarts, weggelassen: {n} s</translation>
    </message>
    <message>
        <source>heart rate outside what a heart does, left out: {n} s</source>
        <translation>Herzfrequenz außerhalb dessen, was ein Herz tut, weggelassen: {n} s</translation>
    </message>
    <message>
        <source>heart rate {beats} /min</source>
        <translation>Herzfrequenz {beats} /min</translation>
    </message>
    <message>
        <source>heart rate, /min</source>
        <translation>Herzfrequenz, /min</translation>
    </message>
    <message>
        <source>heart rate, mean</source>
        <translation>Herzfrequenz, Mittel</translation>
    </message>
    <message>
        <source>heart rate; each run is judged by the line of its day</source>
        <translation>Herzfrequenz; jeder Lauf wird nach der Linie seines Tages beurteilt</translation>
    </message>
    <message>
        <source>heart-rate spikes, left out: {n} s</source>
        <translation>Zacken der Herzfrequenz, weggelassen: {n} s</translation>
    </message>
    <message>
        <source>height m</source>
        <translation>Höhe m</translation>
    </message>
    <message>
        <source>height, m</source>
        <translation>Höhe, m</translation>
    </message>
    <message>
        <source>high-intensity</source>
        <translation>hochintensiv</translation>
    </message>
    <message>
        <source>highest heart rate</source>
        <translation>höchste Herzfrequenz</translation>
    </message>
    <message>
        <source>highest heart rate recorded</source>
        <translation>höchste aufgezeichnete Herzfrequenz</translation>
    </message>
    <message>
        <source>highest heart rate {beats} /min</source>
        <translation>höchste Herzfrequenz {beats} /min</translation>
    </message>
    <message>
        <source>highest uptake</source>
        <translation>höchste Aufnahme</translation>
    </message>
    <message>
        <source>hiking</source>
        <translation>Wandern</translation>
    </message>
    <message>
        <source>hours</source>
        <translation>Stunden</translation>
    </message>
    <message>
        <source>hours judged</source>
        <translation>Stunden beurteilt</translation>
    </message>
    <message>
        <source>hours run</source>
        <translation>Stunden gelaufen</translation>
    </message>
    <message>
        <source>hurt</source>
        <translation>verletzt</translation>
    </message>
    <message>
        <source>if the thresholds are right, in 9 of 10 cases or more the {n} measured runs are {shades}</source>
        <translation>stimmen die Schwellen, sind die {n} gemessenen Läufe in 9 von 10 Fällen oder mehr {shades}</translation>
    </message>
    <message>
        <source>if the thresholds are right, in 9 of 10 cases or more {n} measured run is {shades}</source>
        <translation>stimmen die Schwellen, ist {n} gemessener Lauf in 9 von 10 Fällen oder mehr {shades}</translation>
    </message>
    <message>
        <source>if the thresholds are right, in 9 of 10 cases or more {shades}</source>
        <translation>stimmen die Schwellen, in 9 von 10 Fällen oder mehr {shades}</translation>
    </message>
    <message>
        <source>ill</source>
        <translation>krank</translation>
    </message>
    <message>
        <source>in hand</source>
        <translation>voraus</translation>
    </message>
    <message>
        <source>in {n} day</source>
        <translation>in {n} Tag</translation>
    </message>
    <message>
        <source>in {n} days</source>
        <translation>in {n} Tagen</translation>
    </message>
    <message>
        <source>it ends on {end}, before it starts on {start}</source>
        <translation>er endet am {end}, bevor er am {start} beginnt</translation>
    </message>
    <message>
        <source>it holds no [[thresholds]], no [[blocks]], no [[races]] and no [[planned]]</source>
        <translation>sie enthält keine [[thresholds]], keine [[blocks]], keine [[races]] und keine [[planned]]</translation>
    </message>
    <message>
        <source>it was joined or cut: take that back first</source>
        <translation>sie wurde verbunden oder geteilt: nimm das zuerst zurück</translation>
    </message>
    <message>
        <source>its file cannot be read any more: {reason}</source>
        <translation>ihre Datei ist nicht mehr lesbar: {reason}</translation>
    </message>
    <message>
        <source>jog</source>
        <translation>traben</translation>
    </message>
    <message>
        <source>june race, hard &gt; 10 min, treadmill, left calf</source>
        <translation>Juni Rennen, hart &gt; 10 min, Laufband, linke Wade</translation>
    </message>
    <message>
        <source>kilometres</source>
        <translation>Kilometer</translation>
    </message>
    <message>
        <source>kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>kind = &quot;{kind}&quot; is none of {kinds}</source>
        <translation>kind = &quot;{kind}&quot; ist keines von {kinds}</translation>
    </message>
    <message>
        <source>kind, in words</source>
        <translation>Art, in Worten</translation>
    </message>
    <message>
        <source>km</source>
        <translation>km</translation>
    </message>
    <message>
        <source>km/h, pace</source>
        <translation>km/h, Tempo</translation>
    </message>
    <message>
        <source>known to me</source>
        <translation>mir bekannt</translation>
    </message>
    <message>
        <source>lactate</source>
        <translation>Laktat</translation>
    </message>
    <message>
        <source>lactate ends no higher than it began</source>
        <translation>Laktat endet nicht höher, als es begann</translation>
    </message>
    <message>
        <source>lactate rises by less than {rise} mmol/L: the test ended too early to tell</source>
        <translation>Laktat steigt um weniger als {rise} mmol/L: der Test endete zu früh für eine Aussage</translation>
    </message>
    <message>
        <source>lactate rises only in the last step</source>
        <translation>Laktat steigt erst in der letzten Stufe</translation>
    </message>
    <message>
        <source>last</source>
        <comment>week</comment>
        <translation>letzte</translation>
    </message>
    <message>
        <source>last</source>
        <translation>letzte</translation>
    </message>
    <message>
        <source>last {block}, {hours} run, ended {day}</source>
        <translation>zuletzt {block}, {hours} gelaufen, beendet {day}</translation>
    </message>
    <message>
        <source>latitude</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>latitude longitude</source>
        <translation>Breite Länge</translation>
    </message>
    <message>
        <source>leaps of the way that nobody runs, left out: {n} m</source>
        <translation>Sprünge des Wegs, die niemand läuft, weggelassen: {n} m</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>weggelassen</translation>
    </message>
    <message>
        <source>left out, not kept</source>
        <translation>weggelassen, nicht behalten</translation>
    </message>
    <message>
        <source>left out: {pages}</source>
        <translation>weggelassen: {pages}</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>length planned</source>
        <translation>geplante Länge</translation>
    </message>
    <message>
        <source>line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>line {line} &apos;{words}&apos;: {question}</source>
        <translation>Zeile {line} „{words}“: {question}</translation>
    </message>
    <message>
        <source>load</source>
        <translation>Belastung</translation>
    </message>
    <message>
        <source>log-log</source>
        <translation>log-log</translation>
    </message>
    <message>
        <source>long</source>
        <translation>lang</translation>
    </message>
    <message>
        <source>longer</source>
        <translation>länger</translation>
    </message>
    <message>
        <source>longest run</source>
        <translation>längster Lauf</translation>
    </message>
    <message>
        <source>longest run by distance</source>
        <translation>längster Lauf nach Strecke</translation>
    </message>
    <message>
        <source>longest run by time</source>
        <translation>längster Lauf nach Zeit</translation>
    </message>
    <message>
        <source>longest week</source>
        <translation>längste Woche</translation>
    </message>
    <message>
        <source>longitude</source>
        <translation>Länge (Grad)</translation>
    </message>
    <message>
        <source>maximal heart rate</source>
        <translation>maximale Herzfrequenz</translation>
    </message>
    <message>
        <source>mean heart rate</source>
        <translation>mittlere Herzfrequenz</translation>
    </message>
    <message>
        <source>mean of {n} × {kind}</source>
        <translation>Mittel von {n} × {kind}</translation>
    </message>
    <message>
        <source>meant</source>
        <translation>beabsichtigt</translation>
    </message>
    <message>
        <source>measure should be &quot;time&quot; or &quot;metres&quot;</source>
        <translation>measure soll &quot;time&quot; oder &quot;metres&quot; sein</translation>
    </message>
    <message>
        <source>metres</source>
        <translation>Meter</translation>
    </message>
    <message>
        <source>mi</source>
        <translation>mi</translation>
    </message>
    <message>
        <source>miles</source>
        <translation>Meilen</translation>
    </message>
    <message>
        <source>milliseconds from the start</source>
        <translation>Millisekunden ab Start</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>minutes</source>
        <translation>Minuten</translation>
    </message>
    <message>
        <source>minutes from the start</source>
        <translation>Minuten ab Start</translation>
    </message>
    <message>
        <source>missed</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>missed {time}</source>
        <translation>ausgelassen {time}</translation>
    </message>
    <message>
        <source>moderate</source>
        <translation>mittel</translation>
    </message>
    <message>
        <source>moderate about {time}</source>
        <translation>mittel etwa {time}</translation>
    </message>
    <message>
        <source>moderate from {value}</source>
        <translation>mittel ab {value}</translation>
    </message>
    <message>
        <source>moderate in the season that was not meant</source>
        <translation>mittel in der Saison, nicht beabsichtigt</translation>
    </message>
    <message>
        <source>moderate in {stretch} that was not meant</source>
        <translation>mittel in {stretch}, nicht beabsichtigt</translation>
    </message>
    <message>
        <source>moderate {low} to {high}</source>
        <translation>mittel {low} bis {high}</translation>
    </message>
    <message>
        <source>moderate {run} of {wanted}</source>
        <translation>mittel {run} von {wanted}</translation>
    </message>
    <message>
        <source>moderate {run} of {wanted} {unit}</source>
        <translation>mittel {run} von {wanted} {unit}</translation>
    </message>
    <message>
        <source>moderate {time}</source>
        <translation>mittel {time}</translation>
    </message>
    <message>
        <source>moderate {value}</source>
        <translation>mittel {value}</translation>
    </message>
    <message>
        <source>modified Dmax</source>
        <translation>modifiziertes Dmax</translation>
    </message>
    <message>
        <source>monotony</source>
        <translation>Monotonie</translation>
    </message>
    <message>
        <source>monotony, week of {day}</source>
        <translation>Monotonie, Woche vom {day}</translation>
    </message>
    <message>
        <source>more of it</source>
        <translation>mehr davon</translation>
    </message>
    <message>
        <source>mostly Fridays</source>
        <translation>meist freitags</translation>
    </message>
    <message>
        <source>mostly Mondays</source>
        <translation>meist montags</translation>
    </message>
    <message>
        <source>mostly Saturdays</source>
        <translation>meist samstags</translation>
    </message>
    <message>
        <source>mostly Sundays</source>
        <translation>meist sonntags</translation>
    </message>
    <message>
        <source>mostly Thursdays</source>
        <translation>meist donnerstags</translation>
    </message>
    <message>
        <source>mostly Tuesdays</source>
        <translation>meist dienstags</translation>
    </message>
    <message>
        <source>mostly Wednesdays</source>
        <translation>meist mittwochs</translation>
    </message>
    <message>
        <source>moving time</source>
        <translation>Zeit in Bewegung</translation>
    </message>
    <message>
        <source>name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>near highest</source>
        <translation>nahe der höchsten</translation>
    </message>
    <message>
        <source>near highest: over 90</source>
        <translation>nahe: über 90</translation>
    </message>
    <message>
        <source>no block today</source>
        <translation>heute kein Block</translation>
    </message>
    <message>
        <source>no channel</source>
        <translation>kein Kanal</translation>
    </message>
    <message>
        <source>no class: shares tie</source>
        <translation>keine Klasse: Anteile sind gleich</translation>
    </message>
    <message>
        <source>no data yet</source>
        <translation>noch keine Daten</translation>
    </message>
    <message>
        <source>no position was recorded from which a zone could be told</source>
        <translation>keine Position wurde aufgezeichnet, aus der eine Zeitzone folgte</translation>
    </message>
    <message>
        <source>no race ahead</source>
        <translation>kein Rennen voraus</translation>
    </message>
    <message>
        <source>no repetitions</source>
        <translation>keine Wiederholungen</translation>
    </message>
    <message>
        <source>no run</source>
        <translation>kein Lauf</translation>
    </message>
    <message>
        <source>no runs</source>
        <translation>keine Läufe</translation>
    </message>
    <message>
        <source>no runs in this block</source>
        <translation>keine Läufe in diesem Block</translation>
    </message>
    <message>
        <source>no runs since {day}</source>
        <translation>keine Läufe seit {day}</translation>
    </message>
    <message>
        <source>no runs yet</source>
        <translation>noch keine Läufe</translation>
    </message>
    <message>
        <source>no runs: {reason}</source>
        <translation>keine Läufe: {reason}</translation>
    </message>
    <message>
        <source>no runs: “{why}”, from notes</source>
        <translation>keine Läufe: „{why}“, aus Notizen</translation>
    </message>
    <message>
        <source>no step rises by {rise} mmol/L</source>
        <translation>keine Stufe steigt um {rise} mmol/L</translation>
    </message>
    <message>
        <source>no such part</source>
        <translation>kein solcher Teil</translation>
    </message>
    <message>
        <source>no time zone is called &quot;{zone_name}&quot;; an example is Europe/Madrid</source>
        <translation>keine Zeitzone heißt „{zone_name}“; ein Beispiel ist Europe/Madrid</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>none found</source>
        <translation>keine gefunden</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keine</translation>
    </message>
    <message>
        <source>not a table</source>
        <translation>keine Tabelle</translation>
    </message>
    <message>
        <source>not judged</source>
        <translation>nicht beurteilt</translation>
    </message>
    <message>
        <source>not judged {time}</source>
        <translation>nicht beurteilt {time}</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>not meant</source>
        <translation>nicht beabsichtigt</translation>
    </message>
    <message>
        <source>not on the page, not in any file</source>
        <translation>nicht auf der Seite, in keiner Datei</translation>
    </message>
    <message>
        <source>not read: {typed}. {question}</source>
        <translation>nicht gelesen: {typed}. {question}</translation>
    </message>
    <message>
        <source>not readable as TOML: {error}</source>
        <translation>nicht als TOML lesbar: {error}</translation>
    </message>
    <message>
        <source>not running {time}</source>
        <translation>nicht gelaufen {time}</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>not set</source>
        <translation>nicht gesetzt</translation>
    </message>
    <message>
        <source>not used</source>
        <translation>nicht verwendet</translation>
    </message>
    <message>
        <source>notation is missing, such as &quot;40 min easy, 6 x 100 m fast / 100 m walk&quot;</source>
        <translation>notation fehlt, etwa „40 min easy, 6 x 100 m fast / 100 m walk“</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>nothing judged</source>
        <translation>nichts beurteilt</translation>
    </message>
    <message>
        <source>nothing moderate</source>
        <translation>nichts Mittleres</translation>
    </message>
    <message>
        <source>nothing planned</source>
        <translation>nichts geplant</translation>
    </message>
    <message>
        <source>nothing run yet</source>
        <translation>noch nichts gelaufen</translation>
    </message>
    <message>
        <source>nothing said</source>
        <translation>nichts angegeben</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>numbers, {n} of {count}</source>
        <translation>Zahlen, {n} von {count}</translation>
    </message>
    <message>
        <source>of it easy</source>
        <translation>davon locker</translation>
    </message>
    <message>
        <source>of the middle</source>
        <translation>der Mitte</translation>
    </message>
    <message>
        <source>of {whole}, {n} run changes; it can be undone</source>
        <translation>von {whole} ändert sich {n} Lauf; rückgängig möglich</translation>
    </message>
    <message>
        <source>of {whole}, {n} runs change; it can be undone</source>
        <translation>von {whole} ändern sich {n} Läufe; rückgängig möglich</translation>
    </message>
    <message>
        <source>on {day}, {percent} % over the month before</source>
        <translation>am {day}, {percent} % über dem Monat davor</translation>
    </message>
    <message>
        <source>one line a runner, the current block so far, all on one scale</source>
        <translation>eine Zeile je Läufer, der laufende Block bis jetzt, alle im selben Maßstab</translation>
    </message>
    <message>
        <source>one race</source>
        <translation>ein Rennen</translation>
    </message>
    <message>
        <source>only the order of its pages</source>
        <translation>nur die Reihenfolge der Seiten</translation>
    </message>
    <message>
        <source>open dots: not applied</source>
        <translation>offene Punkte: nicht angewandt</translation>
    </message>
    <message>
        <source>or age</source>
        <translation>oder Alter</translation>
    </message>
    <message>
        <source>other</source>
        <translation>andere</translation>
    </message>
    <message>
        <source>other sport</source>
        <translation>andere Sportart</translation>
    </message>
    <message>
        <source>oxygen cost</source>
        <translation>Sauerstoffkosten</translation>
    </message>
    <message>
        <source>pace</source>
        <translation>Tempo</translation>
    </message>
    <message>
        <source>pace on level ground, min/km; each run is judged by the line of its day</source>
        <translation>Tempo auf ebenem Boden, min/km; jeder Lauf wird nach der Linie seines Tages beurteilt</translation>
    </message>
    <message>
        <source>pace on level ground, min/mile; each run is judged by the line of its day</source>
        <translation>Tempo auf ebenem Boden, min/Meile; jeder Lauf wird nach der Linie seines Tages beurteilt</translation>
    </message>
    <message>
        <source>pace there</source>
        <translation>Tempo dort</translation>
    </message>
    <message>
        <source>pace {unit}</source>
        <translation>Tempo {unit}</translation>
    </message>
    <message>
        <source>pace, min/km</source>
        <translation>Tempo, min/km</translation>
    </message>
    <message>
        <source>pace, min/mile</source>
        <translation>Tempo, min/Meile</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>planned</source>
        <translation>geplant</translation>
    </message>
    <message>
        <source>planned sessions</source>
        <translation>geplante Einheiten</translation>
    </message>
    <message>
        <source>planned {session}, {length}, {state}</source>
        <translation>geplant {session}, {length}, {state}</translation>
    </message>
    <message>
        <source>pm</source>
        <translation>nachmittags</translation>
    </message>
    <message>
        <source>polarised</source>
        <translation>polarisiert</translation>
    </message>
    <message>
        <source>positions that leap away and back, left out: {n}</source>
        <translation>Positionen, die weg- und zurückspringen, weggelassen: {n}</translation>
    </message>
    <message>
        <source>power</source>
        <translation>Leistung</translation>
    </message>
    <message>
        <source>power W</source>
        <translation>Leistung W</translation>
    </message>
    <message>
        <source>power law</source>
        <translation>Potenzgesetz</translation>
    </message>
    <message>
        <source>power, W</source>
        <translation>Leistung, W</translation>
    </message>
    <message>
        <source>predicted for {runner}; a model, not a measurement</source>
        <translation>vorhergesagt für {runner}; ein Modell, keine Messung</translation>
    </message>
    <message>
        <source>predicted for {runner}; about, from estimated paces; a model, not a measurement</source>
        <translation>vorhergesagt für {runner}; ungefähr, aus geschätzten Tempi; ein Modell, keine Messung</translation>
    </message>
    <message>
        <source>predicted; a model, not a measurement</source>
        <translation>vorhergesagt; ein Modell, keine Messung</translation>
    </message>
    <message>
        <source>predicted; about, from estimated paces; a model, not a measurement</source>
        <translation>vorhergesagt; ungefähr, aus geschätzten Tempi; ein Modell, keine Messung</translation>
    </message>
    <message>
        <source>program</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>pyramidal</source>
        <translation>pyramidal</translation>
    </message>
    <message>
        <source>race</source>
        <translation>Rennen</translation>
    </message>
    <message>
        <source>race</source>
        <comment>in a column of weeks to go</comment>
        <translation>0</translation>
    </message>
    <message>
        <source>race week</source>
        <translation>Rennwoche</translation>
    </message>
    <message>
        <source>race {name}</source>
        <translation>Rennen {name}</translation>
    </message>
    <message>
        <source>races</source>
        <translation>Rennen</translation>
    </message>
    <message>
        <source>recovery</source>
        <comment>rest between</comment>
        <translation>Pause</translation>
    </message>
    <message>
        <source>recovery</source>
        <translation>Erholung</translation>
    </message>
    <message>
        <source>recovery {time}</source>
        <translation>Pause {time}</translation>
    </message>
    <message>
        <source>repetition</source>
        <translation>Wiederholung</translation>
    </message>
    <message>
        <source>repetitions</source>
        <comment>word of a search</comment>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>rest</source>
        <translation>Pause</translation>
    </message>
    <message>
        <source>rest planned</source>
        <translation>Ruhe geplant</translation>
    </message>
    <message>
        <source>rest {time}</source>
        <translation>Pause {time}</translation>
    </message>
    <message>
        <source>resting heart rate</source>
        <translation>Ruheherzfrequenz</translation>
    </message>
    <message>
        <source>run</source>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>run so far: about {easy} % easy, {moderate} moderate, {hard} hard</source>
        <translation>bisher gelaufen: etwa {easy} % locker, {moderate} mittel, {hard} hart</translation>
    </message>
    <message>
        <source>run so far: {easy} % easy, {moderate} moderate, {hard} hard</source>
        <translation>bisher gelaufen: {easy} % locker, {moderate} mittel, {hard} hart</translation>
    </message>
    <message>
        <source>run {time}</source>
        <translation>gelaufen {time}</translation>
    </message>
    <message>
        <source>runner</source>
        <translation>Läufer</translation>
    </message>
    <message>
        <source>running</source>
        <translation>Laufen</translation>
    </message>
    <message>
        <source>running power by your own meter, W; each run is judged by the line of its day</source>
        <translation>Laufleistung nach deinem eigenen Messgerät, W; jeder Lauf wird nach der Linie seines Tages beurteilt</translation>
    </message>
    <message>
        <source>running power {watts} W</source>
        <translation>Laufleistung {watts} W</translation>
    </message>
    <message>
        <source>running power, W</source>
        <translation>Laufleistung, W</translation>
    </message>
    <message>
        <source>running time</source>
        <translation>Laufzeit</translation>
    </message>
    <message>
        <source>runs</source>
        <translation>Läufe</translation>
    </message>
    <message>
        <source>runs before it too</source>
        <translation>auch Läufe davor</translation>
    </message>
    <message>
        <source>runs without work stayed easy</source>
        <translation>Läufe ohne Belastung blieben locker</translation>
    </message>
    <message>
        <source>say how long you run in a week nowadays, such as 2:30</source>
        <translation>sag, wie lange du zurzeit in einer Woche läufst, etwa 2:30</translation>
    </message>
    <message>
        <source>season file</source>
        <translation>Saisondatei</translation>
    </message>
    <message>
        <source>seconds from the start</source>
        <translation>Sekunden ab Start</translation>
    </message>
    <message>
        <source>seconds without signal, run on by the distance: {n} s</source>
        <translation>Sekunden ohne Signal, nach der Strecke weitergeführt: {n} s</translation>
    </message>
    <message>
        <source>session</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>session {n} min, without warm-up</source>
        <translation>Einheit {n} min, ohne Einlaufen</translation>
    </message>
    <message>
        <source>sessions</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>sessions easy / moderate / hard</source>
        <translation>Einheiten locker / mittel / hart</translation>
    </message>
    <message>
        <source>set</source>
        <translation>Serie</translation>
    </message>
    <message>
        <source>shade</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>share of easy</source>
        <translation>Anteil locker</translation>
    </message>
    <message>
        <source>short</source>
        <comment>of easy time</comment>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>short of {wanted}</source>
        <translation>unter den gewünschten {wanted}</translation>
    </message>
    <message>
        <source>short, {share}</source>
        <translation>zu wenig, {share}</translation>
    </message>
    <message>
        <source>short: {blocks}</source>
        <translation>zu wenig: {blocks}</translation>
    </message>
    <message>
        <source>slow jog</source>
        <translation>langsames Traben</translation>
    </message>
    <message>
        <source>slower than {pace}</source>
        <translation>langsamer als {pace}</translation>
    </message>
    <message>
        <source>so far in the block: {values}</source>
        <translation>bisher im Block: {values}</translation>
    </message>
    <message>
        <source>source</source>
        <translation>Quelle</translation>
    </message>
    <message>
        <source>spacing lies between 1 and 7 days</source>
        <translation>der Abstand liegt zwischen 1 und 7 Tagen</translation>
    </message>
    <message>
        <source>specific</source>
        <translation>Spezifisch</translation>
    </message>
    <message>
        <source>speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>speed or pace</source>
        <translation>Geschwindigkeit oder Tempo</translation>
    </message>
    <message>
        <source>speed spikes, left out: {n}</source>
        <translation>Zacken der Geschwindigkeit, weggelassen: {n}</translation>
    </message>
    <message>
        <source>speed, km/h</source>
        <translation>Geschwindigkeit, km/h</translation>
    </message>
    <message>
        <source>speed, m/s</source>
        <translation>Geschwindigkeit, m/s</translation>
    </message>
    <message>
        <source>speed, miles/h</source>
        <translation>Geschwindigkeit, Meilen/h</translation>
    </message>
    <message>
        <source>speeds {uneven} % uneven</source>
        <translation>Geschwindigkeiten {uneven} % ungleichmäßig</translation>
    </message>
    <message>
        <source>sport</source>
        <translation>Sportart</translation>
    </message>
    <message>
        <source>stand</source>
        <translation>stehen</translation>
    </message>
    <message>
        <source>start</source>
        <translation>Start</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>step test by ventilation</source>
        <translation>Stufentest nach Atmung</translation>
    </message>
    <message>
        <source>step test by ventilation: VT1 is LT1, VT2 is LT2</source>
        <translation>Stufentest nach Atmung: VT1 ist LT1, VT2 ist LT2</translation>
    </message>
    <message>
        <source>step test in a laboratory</source>
        <translation>Stufentest im Labor</translation>
    </message>
    <message>
        <source>step test: {lt1_method}, {lt2_method}</source>
        <translation>Stufentest: {lt1_method}, {lt2_method}</translation>
    </message>
    <message>
        <source>step {n} is not faster than the one before</source>
        <translation>Stufe {n} ist nicht schneller als die vorige</translation>
    </message>
    <message>
        <source>step {n}: heart rate must lie between 25 and 250 beats/min</source>
        <translation>Stufe {n}: Herzfrequenz muss zwischen 25 und 250 Schlägen/min liegen</translation>
    </message>
    <message>
        <source>step {n}: lactate must lie between 0.1 and 30 mmol/L</source>
        <translation>Stufe {n}: Laktat muss zwischen 0,1 und 30 mmol/L liegen</translation>
    </message>
    <message>
        <source>step {n}: no running speed</source>
        <translation>Stufe {n}: keine Laufgeschwindigkeit</translation>
    </message>
    <message>
        <source>step, min</source>
        <translation>Stufe, min</translation>
    </message>
    <message>
        <source>still to run</source>
        <translation>noch zu laufen</translation>
    </message>
    <message>
        <source>still to run {time}</source>
        <translation>noch zu laufen {time}</translation>
    </message>
    <message>
        <source>straight line</source>
        <translation>gerade Linie</translation>
    </message>
    <message>
        <source>strain</source>
        <translation>Beanspruchung</translation>
    </message>
    <message>
        <source>stretch</source>
        <translation>Abschnitt</translation>
    </message>
    <message>
        <source>stretches shaded by hand</source>
        <translation>von Hand eingestufte Abschnitte</translation>
    </message>
    <message>
        <source>stretches shaded by hand in {n} run</source>
        <translation>von Hand eingestufte Abschnitte in {n} Lauf</translation>
    </message>
    <message>
        <source>stretches shaded by hand in {n} runs</source>
        <translation>von Hand eingestufte Abschnitte in {n} Läufen</translation>
    </message>
    <message>
        <source>such as Europe/Madrid</source>
        <translation>etwa Europe/Madrid</translation>
    </message>
    <message>
        <source>support</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>swimming</source>
        <translation>Schwimmen</translation>
    </message>
    <message>
        <source>taper</source>
        <translation>Tapering</translation>
    </message>
    <message>
        <source>temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>tests</source>
        <translation>Tests</translation>
    </message>
    <message>
        <source>that block is no longer there</source>
        <translation>dieser Block ist nicht mehr da</translation>
    </message>
    <message>
        <source>that planned session is no longer there</source>
        <translation>diese geplante Einheit ist nicht mehr da</translation>
    </message>
    <message>
        <source>the blocks &quot;{first}&quot; and &quot;{second}&quot; overlap on {start}</source>
        <translation>die Blöcke „{first}“ und „{second}“ überschneiden sich am {start}</translation>
    </message>
    <message>
        <source>the clipboard</source>
        <translation>der Zwischenablage</translation>
    </message>
    <message>
        <source>the curve has no bend below its chord</source>
        <translation>die Kurve hat keinen Knick unter ihrer Sehne</translation>
    </message>
    <message>
        <source>the file cannot be read any more</source>
        <translation>die Datei ist nicht mehr lesbar</translation>
    </message>
    <message>
        <source>the last 6 months</source>
        <translation>den letzten 6 Monaten</translation>
    </message>
    <message>
        <source>the last 8 weeks</source>
        <translation>den letzten 8 Wochen</translation>
    </message>
    <message>
        <source>the last 90 days</source>
        <translation>den letzten 90 Tagen</translation>
    </message>
    <message>
        <source>the lines in logarithms do not bend upwards</source>
        <translation>die Linien in Logarithmen knicken nicht nach oben</translation>
    </message>
    <message>
        <source>the same run as {name} of {day}; counted once</source>
        <translation>derselbe Lauf wie {name} vom {day}; einmal gezählt</translation>
    </message>
    <message>
        <source>the same run as {name} of {day}; this one holds more and is shown</source>
        <translation>derselbe Lauf wie {name} vom {day}; dieser enthält mehr und wird gezeigt</translation>
    </message>
    <message>
        <source>then</source>
        <translation>damals</translation>
    </message>
    <message>
        <source>there are {hours} h between them: too long for one run</source>
        <translation>dazwischen liegen {hours} h: zu lang für einen Lauf</translation>
    </message>
    <message>
        <source>they overlap by {minutes} min: they are not two pieces of one run</source>
        <translation>sie überschneiden sich um {minutes} min: es sind nicht zwei Stücke eines Laufs</translation>
    </message>
    <message>
        <source>this session is gone</source>
        <translation>diese Einheit ist weg</translation>
    </message>
    <message>
        <source>this week</source>
        <translation>diese Woche</translation>
    </message>
    <message>
        <source>threshold</source>
        <translation>Schwelle</translation>
    </message>
    <message>
        <source>thresholds</source>
        <translation>Schwellen</translation>
    </message>
    <message>
        <source>thresholds estimated</source>
        <translation>Schwellen geschätzt</translation>
    </message>
    <message>
        <source>thresholds, {source}</source>
        <translation>Schwellen, {source}</translation>
    </message>
    <message>
        <source>time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>time from the start</source>
        <translation>Zeit ab Start</translation>
    </message>
    <message>
        <source>time in hours</source>
        <translation>Zeit in Stunden</translation>
    </message>
    <message>
        <source>time of day</source>
        <translation>Uhrzeit</translation>
    </message>
    <message>
        <source>time taken</source>
        <translation>Dauer</translation>
    </message>
    <message>
        <source>time taken, h:mm</source>
        <translation>Dauer, h:mm</translation>
    </message>
    <message>
        <source>time taken, h:mm:ss</source>
        <translation>Dauer, h:mm:ss</translation>
    </message>
    <message>
        <source>time taken, hours</source>
        <translation>Dauer, Stunden</translation>
    </message>
    <message>
        <source>time taken, in days (1.0 is 24 h)</source>
        <translation>Dauer, in Tagen (1.0 ist 24 h)</translation>
    </message>
    <message>
        <source>time taken, m:ss</source>
        <translation>Dauer, m:ss</translation>
    </message>
    <message>
        <source>time taken, minutes</source>
        <translation>Dauer, Minuten</translation>
    </message>
    <message>
        <source>time taken, seconds</source>
        <translation>Dauer, Sekunden</translation>
    </message>
    <message>
        <source>to</source>
        <comment>last day of a block</comment>
        <translation>bis</translation>
    </message>
    <message>
        <source>to 100 m</source>
        <translation>bis 100 m</translation>
    </message>
    <message>
        <source>to go</source>
        <translation>noch</translation>
    </message>
    <message>
        <source>today</source>
        <translation>heute</translation>
    </message>
    <message>
        <source>top speed</source>
        <translation>Höchstgeschwindigkeit</translation>
    </message>
    <message>
        <source>track</source>
        <translation>Bahn</translation>
    </message>
    <message>
        <source>trail</source>
        <translation>Trail</translation>
    </message>
    <message>
        <source>treadmill</source>
        <translation>Laufband</translation>
    </message>
    <message>
        <source>type or paste; one line a day</source>
        <translation>tippen oder einfügen; eine Zeile je Tag</translation>
    </message>
    <message>
        <source>typed</source>
        <translation>getippt</translation>
    </message>
    <message>
        <source>under 3 hours: no curve</source>
        <translation>unter 3 Stunden: keine Kurve</translation>
    </message>
    <message>
        <source>unfolded</source>
        <translation>aufgeklappt</translation>
    </message>
    <message>
        <source>unjudged</source>
        <translation>nicht beurteilt</translation>
    </message>
    <message>
        <source>unknown name {name}</source>
        <translation>unbekannter Name {name}</translation>
    </message>
    <message>
        <source>unknown sport</source>
        <translation>unbekannte Sportart</translation>
    </message>
    <message>
        <source>unplanned</source>
        <translation>ungeplant</translation>
    </message>
    <message>
        <source>up to</source>
        <translation>bis zu</translation>
    </message>
    <message>
        <source>usual pace alone</source>
        <translation>übliches Tempo allein</translation>
    </message>
    <message>
        <source>values that cannot be, left out: {n}</source>
        <translation>Werte, die nicht sein können, weggelassen: {n}</translation>
    </message>
    <message>
        <source>walk</source>
        <translation>gehen</translation>
    </message>
    <message>
        <source>walking</source>
        <translation>Gehen</translation>
    </message>
    <message>
        <source>wanted</source>
        <translation>Soll</translation>
    </message>
    <message>
        <source>wanted {wanted}</source>
        <translation>Soll {wanted}</translation>
    </message>
    <message>
        <source>warm-up</source>
        <translation>Einlaufen</translation>
    </message>
    <message>
        <source>week of</source>
        <translation>Woche</translation>
    </message>
    <message>
        <source>week of {day}</source>
        <translation>Woche vom {day}</translation>
    </message>
    <message>
        <source>weeks</source>
        <translation>Wochen</translation>
    </message>
    <message>
        <source>what</source>
        <translation>was</translation>
    </message>
    <message>
        <source>when</source>
        <translation>wann</translation>
    </message>
    <message>
        <source>whether it was meant</source>
        <translation>ob es beabsichtigt war</translation>
    </message>
    <message>
        <source>whether {n} run was meant</source>
        <translation>ob {n} Lauf beabsichtigt war</translation>
    </message>
    <message>
        <source>whether {n} runs were meant</source>
        <translation>ob {n} Läufe beabsichtigt waren</translation>
    </message>
    <message>
        <source>which are</source>
        <translation>diese mit</translation>
    </message>
    <message>
        <source>wild heart rate, left out: {n} s</source>
        <translation>wilde Herzfrequenz, weggelassen: {n} s</translation>
    </message>
    <message>
        <source>words</source>
        <translation>Worte</translation>
    </message>
    <message>
        <source>words of a review</source>
        <translation>Worte eines Rückblicks</translation>
    </message>
    <message>
        <source>work</source>
        <translation>Belastung</translation>
    </message>
    <message>
        <source>worth a word</source>
        <translation>der Rede wert</translation>
    </message>
    <message>
        <source>you spoke for a part of {n}</source>
        <translation>bei {n} sprachst du für einen Teil</translation>
    </message>
    <message>
        <source>you spoke for parts of {n}</source>
        <translation>bei {n} sprachst du für Teile</translation>
    </message>
    <message>
        <source>{amount} easy to go.</source>
        <translation>Noch {amount} locker.</translation>
    </message>
    <message>
        <source>{amount} hard left this week.</source>
        <translation>Diese Woche noch {amount} hart.</translation>
    </message>
    <message>
        <source>{amount} moderate left.</source>
        <translation>Noch {amount} mittel.</translation>
    </message>
    <message>
        <source>{amount} so far</source>
        <translation>bisher {amount}</translation>
    </message>
    <message>
        <source>{at} of {n} found</source>
        <translation>{at} von {n} gefunden</translation>
    </message>
    <message>
        <source>{at}: left out, because you said so.</source>
        <translation>{at}: weggelassen, weil du es so gesagt hast.</translation>
    </message>
    <message>
        <source>{at}: no shade, for this is not counted as running.</source>
        <translation>{at}: ohne Stufe, denn dies wird nicht als Laufen gezählt.</translation>
    </message>
    <message>
        <source>{at}: not judged, for there are no thresholds or no speed and heart rate here.</source>
        <translation>{at}: nicht beurteilt, denn es gibt keine Schwellen oder hier weder Geschwindigkeit noch Herzfrequenz.</translation>
    </message>
    <message>
        <source>{at}: not running (standing, walking slowly, or the timer stood still).</source>
        <translation>{at}: nicht gelaufen (Stehen, langsames Gehen, oder die Stoppuhr stand).</translation>
    </message>
    <message>
        <source>{at}: {shade}</source>
        <translation>{at}: {shade}</translation>
    </message>
    <message>
        <source>{at}: {shade} by heart rate alone, {beats} /min with its lag undone, against {lt1} and {lt2}.</source>
        <translation>{at}: {shade} nach Herzfrequenz allein, {beats} /min ohne ihre Verzögerung, gegen {lt1} und {lt2}.</translation>
    </message>
    <message>
        <source>{at}: {shade} by running power, {watts} W against {lt1} and {lt2} W</source>
        <translation>{at}: {shade} nach der Laufleistung, {watts} W gegen {lt1} und {lt2} W</translation>
    </message>
    <message>
        <source>{at}: {shade} by running power, {watts} W against {lt1} and {lt2} W, weighed with the running around it</source>
        <translation>{at}: {shade} nach der Laufleistung, {watts} W gegen {lt1} und {lt2} W, abgewogen mit dem Laufen davor und danach</translation>
    </message>
    <message>
        <source>{at}: {shade} by what you wrote; nothing was measured.</source>
        <translation>{at}: {shade} nach dem, was du geschrieben hast; gemessen wurde nichts.</translation>
    </message>
    <message>
        <source>{at}: {shade}, because you said so.</source>
        <translation>{at}: {shade}, weil du es so gesagt hast.</translation>
    </message>
    <message>
        <source>{at}: {shade}, {pace}, {against}</source>
        <translation>{at}: {shade}, {pace}, {against}</translation>
    </message>
    <message>
        <source>{at}: {shade}, {pace}, {against}, borne out by heart rate</source>
        <translation>{at}: {shade}, {pace}, {against}, von der Herzfrequenz gestützt</translation>
    </message>
    <message>
        <source>{at}: {shade}, {pace}, {against}, by running power</source>
        <translation>{at}: {shade}, {pace}, {against}, nach Laufleistung</translation>
    </message>
    <message>
        <source>{at}: {shade}. Its pace alone, {pace}, would be {alone} ({against}); weighed with heart rate and the running around it, it is more likely {shade}</source>
        <translation>{at}: {shade}. Das Tempo allein, {pace}, wäre {alone} ({against}); mit Herzfrequenz und dem Laufen ringsum abgewogen ist es eher {shade}</translation>
    </message>
    <message>
        <source>{at}: {shade}. Its pace alone, {pace}, would be {alone} ({against}); weighed with the running around it, it is more likely {shade}</source>
        <translation>{at}: {shade}. Das Tempo allein, {pace}, wäre {alone} ({against}); mit dem Laufen ringsum abgewogen ist es eher {shade}</translation>
    </message>
    <message>
        <source>{beats} /min</source>
        <translation>{beats} /min</translation>
    </message>
    <message>
        <source>{before} and {after} weeks</source>
        <translation>{before} und {after} Wochen</translation>
    </message>
    <message>
        <source>{blocks}; race {day}.</source>
        <translation>{blocks}; Rennen {day}.</translation>
    </message>
    <message>
        <source>{block} ends before it starts: four weeks would end {day}.</source>
        <translation>{block} endet vor dem Anfang: vier Wochen endeten am {day}.</translation>
    </message>
    <message>
        <source>{block} fell short of its easy share</source>
        <translation>{block} blieb unter dem Anteil locker</translation>
    </message>
    <message>
        <source>{block} from {day}, {n} week</source>
        <translation>{block} ab {day}, {n} Woche</translation>
    </message>
    <message>
        <source>{block} from {day}, {n} week, first {hours} h</source>
        <translation>{block} ab {day}, {n} Woche, erste {hours} h</translation>
    </message>
    <message>
        <source>{block} from {day}, {n} weeks</source>
        <translation>{block} ab {day}, {n} Wochen</translation>
    </message>
    <message>
        <source>{block} from {day}, {n} weeks, first {hours} h</source>
        <translation>{block} ab {day}, {n} Wochen, erste {hours} h</translation>
    </message>
    <message>
        <source>{block} is {short} short of easy: make up {part} of it by leaving moderate out.</source>
        <translation>In {block} fehlen {short} locker: hole {part} davon auf, indem du Mittleres weglässt.</translation>
    </message>
    <message>
        <source>{block} of its {share} easy</source>
        <translation>{block} von seinen {share} locker</translation>
    </message>
    <message>
        <source>{block} so far</source>
        <translation>{block} bisher</translation>
    </message>
    <message>
        <source>{block} {values}, {share} easy, {amount} easy in hand</source>
        <translation>{block} {values}, {share} locker, {amount} locker voraus</translation>
    </message>
    <message>
        <source>{block} {values}, {share} easy, {amount} easy short</source>
        <translation>{block} {values}, {share} locker, {amount} locker zu wenig</translation>
    </message>
    <message>
        <source>{block}, week of {day}</source>
        <translation>{block}, Woche vom {day}</translation>
    </message>
    <message>
        <source>{block}, week {n}</source>
        <translation>{block}, Woche {n}</translation>
    </message>
    <message>
        <source>{block}, week {week} of {weeks}</source>
        <translation>{block}, Woche {week} von {weeks}</translation>
    </message>
    <message>
        <source>{block}, {share}; opens it large</source>
        <translation>{block}, {share}; öffnet ihn groß</translation>
    </message>
    <message>
        <source>{cause}: the runs</source>
        <translation>{cause}: die Läufe</translation>
    </message>
    <message>
        <source>{cause}: {share} of the middle</source>
        <translation>{cause}: {share} der Mitte</translation>
    </message>
    <message>
        <source>{cause}: {time} in {runs}.</source>
        <translation>{cause}: {time} in {runs}.</translation>
    </message>
    <message>
        <source>{change}, {weeks}. Longest run {times}.</source>
        <translation>{change}, {weeks}. Längster Lauf {times}.</translation>
    </message>
    <message>
        <source>{channel}; LT1 {lt1}, LT2 {lt2}</source>
        <translation>{channel}; LT1 {lt1}, LT2 {lt2}</translation>
    </message>
    <message>
        <source>{choice}, for {day}</source>
        <translation>{choice}, für {day}</translation>
    </message>
    <message>
        <source>{climb} climb</source>
        <translation>{climb} Anstieg</translation>
    </message>
    <message>
        <source>{date} is a {weekday}: which day was it?</source>
        <translation>{date} ist ein {weekday}: welcher Tag war es?</translation>
    </message>
    <message>
        <source>{days}. One hour has one length in every block.</source>
        <translation>{days}. Eine Stunde ist in jedem Block gleich lang.</translation>
    </message>
    <message>
        <source>{day} is longer than the longest run wanted, {amount} h.</source>
        <translation>{day} ist länger als der längste gewünschte Lauf, {amount} h.</translation>
    </message>
    <message>
        <source>{day} is longer than the longest run wanted, {amount} {unit}.</source>
        <translation>{day} ist länger als der längste gewünschte Lauf, {amount} {unit}.</translation>
    </message>
    <message>
        <source>{day} {month}</source>
        <translation>{day}. {month}</translation>
    </message>
    <message>
        <source>{day} {month} {year}</source>
        <translation>{day}. {month} {year}</translation>
    </message>
    <message>
        <source>{day} {month} {year}, {clock}</source>
        <translation>{day}. {month} {year}, {clock}</translation>
    </message>
    <message>
        <source>{day} {year}</source>
        <translation>{day} {year}</translation>
    </message>
    <message>
        <source>{day}, in another block</source>
        <translation>{day}, in einem anderen Block</translation>
    </message>
    <message>
        <source>{day}, move: M, arrows, Enter</source>
        <translation>{day}, verschieben: M, Pfeile, Eingabe</translation>
    </message>
    <message>
        <source>{day}: {n} minutes faster than an LT2 of {lt2} allows ({held} on the level). LT2 may be faster, or the positions of that run off.</source>
        <translation>{day}: {n} Minuten schneller, als ein LT2 von {lt2} erlaubt ({held} in der Ebene). LT2 könnte schneller sein, oder die Positionen jenes Laufs stimmen nicht.</translation>
    </message>
    <message>
        <source>{day}: {what}</source>
        <translation>{day}: {what}</translation>
    </message>
    <message>
        <source>{distance} in {time} would be {pace}, which is no running. A time is written 44:10, or 1:35:20 with hours.</source>
        <translation>{distance} in {time} wären {pace}, das ist kein Laufen. Eine Zeit schreibt man 44:10, oder 1:35:20 mit Stunden.</translation>
    </message>
    <message>
        <source>{effort} of 10</source>
        <translation>{effort} von 10</translation>
    </message>
    <message>
        <source>{ends} in 9 of 10 cases, on the level; from {n} run with steady running since {day}, at {low} to {high} °C.</source>
        <translation>{ends} in 9 von 10 Fällen, in der Ebene; seit {day} aus {n} Lauf mit gleichmäßigem Laufen bei {low} bis {high} °C.</translation>
    </message>
    <message>
        <source>{ends} in 9 of 10 cases, on the level; from {n} run with steady running since {day}.</source>
        <translation>{ends} in 9 von 10 Fällen, in der Ebene; seit {day} aus {n} Lauf mit gleichmäßigem Laufen.</translation>
    </message>
    <message>
        <source>{ends} in 9 of 10 cases, on the level; from {n} runs with steady running since {day}, at {low} to {high} °C.</source>
        <translation>{ends} in 9 von 10 Fällen, in der Ebene; seit {day} aus {n} Läufen mit gleichmäßigem Laufen bei {low} bis {high} °C.</translation>
    </message>
    <message>
        <source>{ends} in 9 of 10 cases, on the level; from {n} runs with steady running since {day}.</source>
        <translation>{ends} in 9 von 10 Fällen, in der Ebene; seit {day} aus {n} Läufen mit gleichmäßigem Laufen.</translation>
    </message>
    <message>
        <source>{fault}: it says {day} {month} {year}, {clock} UTC. Say when the run started.</source>
        <translation>{fault}: sie sagt {day}. {month} {year}, {clock} UTC. Gib an, wann der Lauf begann.</translation>
    </message>
    <message>
        <source>{feet} ft</source>
        <translation>{feet} ft</translation>
    </message>
    <message>
        <source>{figure} what: min, km or miles?</source>
        <translation>{figure} was: min, km oder Meilen?</translation>
    </message>
    <message>
        <source>{figure} what: min, s or m?</source>
        <translation>{figure} was: min, s oder m?</translation>
    </message>
    <message>
        <source>{figure} what: s or min?</source>
        <translation>{figure} was: s oder min?</translation>
    </message>
    <message>
        <source>{figure} what?</source>
        <translation>{figure} was?</translation>
    </message>
    <message>
        <source>{file} cannot be read: {why}.</source>
        <translation>{file} ist nicht lesbar: {why}.</translation>
    </message>
    <message>
        <source>{file} holds {n} entries</source>
        <translation>{file} enthält {n} Einträge</translation>
    </message>
    <message>
        <source>{file} holds {n} entry</source>
        <translation>{file} enthält {n} Eintrag</translation>
    </message>
    <message>
        <source>{file} was not planned: {reason}</source>
        <translation>{file} wurde nicht geplant: {reason}</translation>
    </message>
    <message>
        <source>{file} was not read: {reason}.</source>
        <translation>{file} wurde nicht gelesen: {reason}.</translation>
    </message>
    <message>
        <source>{file} was not written: {reason}.</source>
        <translation>{file} wurde nicht geschrieben: {reason}.</translation>
    </message>
    <message>
        <source>{file} was not written: {why}.</source>
        <translation>{file} wurde nicht geschrieben: {why}.</translation>
    </message>
    <message>
        <source>{first} and {last}</source>
        <translation>{first} und {last}</translation>
    </message>
    <message>
        <source>{first} and {second}</source>
        <translation>{first} und {second}</translation>
    </message>
    <message>
        <source>{first} and {second} belong together: give both or neither</source>
        <translation>{first} und {second} gehören zusammen: gib beide an oder keines</translation>
    </message>
    <message>
        <source>{first} and {second} overlap on {day}: {second} may begin on {free}.</source>
        <translation>{first} und {second} überschneiden sich am {day}: {second} kann am {free} beginnen.</translation>
    </message>
    <message>
        <source>{first} must be below {second}: {low} and {high}</source>
        <translation>{first} muss unter {second} liegen: {low} und {high}</translation>
    </message>
    <message>
        <source>{first} must lie between {low} and {high} W: {value}</source>
        <translation>{first} muss zwischen {low} und {high} W liegen: {value}</translation>
    </message>
    <message>
        <source>{first} must lie between {low} and {high} beats/min: {value}</source>
        <translation>{first} muss zwischen {low} und {high} Schlägen/min liegen: {value}</translation>
    </message>
    <message>
        <source>{first} must lie between {low} and {high} m/s: {value}</source>
        <translation>{first} muss zwischen {low} und {high} m/s liegen: {value}</translation>
    </message>
    <message>
        <source>{first} must not exceed {second}: {low} and {high}</source>
        <translation>{first} darf {second} nicht übersteigen: {low} und {high}</translation>
    </message>
    <message>
        <source>{first} ran {before}, {second} {after}</source>
        <translation>{first} lief {before}, {second} {after}</translation>
    </message>
    <message>
        <source>{first} to {last}</source>
        <translation>{first} bis {last}</translation>
    </message>
    <message>
        <source>{first} to {last}, {time} judged</source>
        <translation>{first} bis {last}, {time} beurteilt</translation>
    </message>
    <message>
        <source>{first} to {last}. A day off each week or two is common practice.</source>
        <translation>{first} bis {last}. Ein freier Tag alle ein bis zwei Wochen ist übliche Praxis.</translation>
    </message>
    <message>
        <source>{format} entry</source>
        <translation>{format}-Eintrag</translation>
    </message>
    <message>
        <source>{format} recording</source>
        <translation>{format}-Aufzeichnung</translation>
    </message>
    <message>
        <source>{hard} was the hard day, {long} the long one</source>
        <translation>{hard} war der harte Tag, {long} der lange</translation>
    </message>
    <message>
        <source>{hours} easy</source>
        <translation>{hours} locker</translation>
    </message>
    <message>
        <source>{hours} h {minutes}</source>
        <translation>{hours} h {minutes}</translation>
    </message>
    <message>
        <source>{hours} hard</source>
        <translation>{hours} hart</translation>
    </message>
    <message>
        <source>{hours} hours in {n} session, {share} easy</source>
        <translation>{hours} Stunden in {n} Einheit, {share} locker</translation>
    </message>
    <message>
        <source>{hours} hours in {n} sessions, {share} easy</source>
        <translation>{hours} Stunden in {n} Einheiten, {share} locker</translation>
    </message>
    <message>
        <source>{hours} in the middle in all</source>
        <translation>{hours} in der Mitte insgesamt</translation>
    </message>
    <message>
        <source>{hours} moderate</source>
        <translation>{hours} mittel</translation>
    </message>
    <message>
        <source>{hours} not judged</source>
        <translation>{hours} nicht beurteilt</translation>
    </message>
    <message>
        <source>{hours} planned</source>
        <translation>{hours} geplant</translation>
    </message>
    <message>
        <source>{hours} run</source>
        <translation>{hours} gelaufen</translation>
    </message>
    <message>
        <source>{hours} run in {n} week</source>
        <translation>{hours} gelaufen in {n} Woche</translation>
    </message>
    <message>
        <source>{hours} run in {n} week, {share} easy</source>
        <translation>{hours} gelaufen in {n} Woche, {share} locker</translation>
    </message>
    <message>
        <source>{hours} run in {n} weeks</source>
        <translation>{hours} gelaufen in {n} Wochen</translation>
    </message>
    <message>
        <source>{hours} run in {n} weeks, {share} easy</source>
        <translation>{hours} gelaufen in {n} Wochen, {share} locker</translation>
    </message>
    <message>
        <source>{hours} run of {wanted} wanted</source>
        <translation>{hours} von gewünschten {wanted} gelaufen</translation>
    </message>
    <message>
        <source>{hours} with {hard} hard</source>
        <translation>{hours} mit {hard} hart</translation>
    </message>
    <message>
        <source>{hours}, {share} easy</source>
        <translation>{hours}, {share} locker</translation>
    </message>
    <message>
        <source>{it} both times</source>
        <translation>beide Male {it}</translation>
    </message>
    <message>
        <source>{kind}, {n} week</source>
        <translation>{kind}, {n} Woche</translation>
    </message>
    <message>
        <source>{kind}, {n} weeks</source>
        <translation>{kind}, {n} Wochen</translation>
    </message>
    <message>
        <source>{length} fast in {time}</source>
        <translation>{length} schnell in {time}</translation>
    </message>
    <message>
        <source>{level} mmol/L was not reached</source>
        <translation>{level} mmol/L wurden nicht erreicht</translation>
    </message>
    <message>
        <source>{line} pace, minutes per {unit}</source>
        <translation>{line} Tempo, Minuten je {unit}</translation>
    </message>
    <message>
        <source>{line}, choose one</source>
        <translation>{line}, eines wählen</translation>
    </message>
    <message>
        <source>{low} to {high}</source>
        <translation>{low} bis {high}</translation>
    </message>
    <message>
        <source>{low} to {high} /min</source>
        <translation>{low} bis {high} /min</translation>
    </message>
    <message>
        <source>{low} to {high} m</source>
        <translation>{low} bis {high} m</translation>
    </message>
    <message>
        <source>{minutes} min</source>
        <translation>{minutes} min</translation>
    </message>
    <message>
        <source>{name} = &quot;{text}&quot; is no time such as {parts}</source>
        <translation>{name} = &quot;{text}&quot; ist keine Zeit wie {parts}</translation>
    </message>
    <message>
        <source>{name} = &quot;{value}&quot; is no date such as 2026-04-13</source>
        <translation>{name} = &quot;{value}&quot; ist kein Datum wie 2026-04-13</translation>
    </message>
    <message>
        <source>{name} block</source>
        <translation>Block {name}</translation>
    </message>
    <message>
        <source>{name} in it is larger than {most} MB.</source>
        <translation>{name} darin ist größer als {most} MB.</translation>
    </message>
    <message>
        <source>{name} is a link to a file that cannot be reached</source>
        <translation>{name} ist ein Verweis auf eine Datei, die nicht erreichbar ist</translation>
    </message>
    <message>
        <source>{name} is missing, a date such as 2026-04-13</source>
        <translation>{name} fehlt, ein Datum wie 2026-04-13</translation>
    </message>
    <message>
        <source>{name} is no ordinary file</source>
        <translation>{name} ist keine gewöhnliche Datei</translation>
    </message>
    <message>
        <source>{name} should be [[...]] entries</source>
        <translation>{name} soll aus [[...]]-Einträgen bestehen</translation>
    </message>
    <message>
        <source>{name} should be a [table]</source>
        <translation>{name} soll eine [Tabelle] sein</translation>
    </message>
    <message>
        <source>{name} should be a number in W</source>
        <translation>{name} soll eine Zahl in W sein</translation>
    </message>
    <message>
        <source>{name} should be a number in beats/min</source>
        <translation>{name} soll eine Zahl in Schlägen/min sein</translation>
    </message>
    <message>
        <source>{name} should be a positive number of kilometres</source>
        <translation>{name} soll eine positive Zahl in Kilometern sein</translation>
    </message>
    <message>
        <source>{name} should lie between 0 and 1</source>
        <translation>{name} soll zwischen 0 und 1 liegen</translation>
    </message>
    <message>
        <source>{name}, half a minute a row</source>
        <translation>{name}, eine halbe Minute je Zeile</translation>
    </message>
    <message>
        <source>{name}, hours</source>
        <translation>{name}, Stunden</translation>
    </message>
    <message>
        <source>{name}, left out: {title}</source>
        <translation>{name}, weggelassen: {title}</translation>
    </message>
    <message>
        <source>{name}, nothing to show yet: {title}</source>
        <translation>{name}, noch nichts zu zeigen: {title}</translation>
    </message>
    <message>
        <source>{name}, now: {share} % easy</source>
        <translation>{name}, jetzt: {share} % locker</translation>
    </message>
    <message>
        <source>{name}, run {length}: {shades} minutes</source>
        <translation>{name}, gelaufen {length}: {shades} Minuten</translation>
    </message>
    <message>
        <source>{name}, then: {share} % easy</source>
        <translation>{name}, damals: {share} % locker</translation>
    </message>
    <message>
        <source>{name}, week of</source>
        <translation>{name}, Woche vom</translation>
    </message>
    <message>
        <source>{name}, {n} week</source>
        <translation>{name}, {n} Woche</translation>
    </message>
    <message>
        <source>{name}, {n} weeks</source>
        <translation>{name}, {n} Wochen</translation>
    </message>
    <message>
        <source>{name}, {runner}, tables</source>
        <translation>{name}, {runner}, Tabellen</translation>
    </message>
    <message>
        <source>{name}: nothing was run.</source>
        <translation>{name}: nichts gelaufen.</translation>
    </message>
    <message>
        <source>{name}: {n} run, {how}</source>
        <translation>{name}: {n} Lauf, {how}</translation>
    </message>
    <message>
        <source>{name}: {n} runs, {how}</source>
        <translation>{name}: {n} Läufe, {how}</translation>
    </message>
    <message>
        <source>{now} to {then} % easy</source>
        <translation>{now} zu {then} % locker</translation>
    </message>
    <message>
        <source>{n} % easy</source>
        <translation>{n} % locker</translation>
    </message>
    <message>
        <source>{n} % easy, short of {wanted}</source>
        <translation>{n} % locker, unter den gewünschten {wanted}</translation>
    </message>
    <message>
        <source>{n} after</source>
        <translation>{n} danach</translation>
    </message>
    <message>
        <source>{n} already here</source>
        <translation>{n} schon da</translation>
    </message>
    <message>
        <source>{n} block</source>
        <translation>{n} Block</translation>
    </message>
    <message>
        <source>{n} block in distance</source>
        <translation>{n} Block nach Strecke</translation>
    </message>
    <message>
        <source>{n} block in hours</source>
        <translation>{n} Block nach Stunden</translation>
    </message>
    <message>
        <source>{n} blocks</source>
        <translation>{n} Blöcke</translation>
    </message>
    <message>
        <source>{n} blocks in distance</source>
        <translation>{n} Blöcke nach Strecke</translation>
    </message>
    <message>
        <source>{n} blocks in hours</source>
        <translation>{n} Blöcke nach Stunden</translation>
    </message>
    <message>
        <source>{n} by heart rate alone</source>
        <translation>{n} nach Herzfrequenz allein</translation>
    </message>
    <message>
        <source>{n} by pace alone</source>
        <translation>{n} nach Tempo allein</translation>
    </message>
    <message>
        <source>{n} by pace and heart rate</source>
        <translation>{n} nach Tempo und Herzfrequenz</translation>
    </message>
    <message>
        <source>{n} by running power</source>
        <translation>{n} nach Laufleistung</translation>
    </message>
    <message>
        <source>{n} by what was written</source>
        <translation>{n} nach Geschriebenem</translation>
    </message>
    <message>
        <source>{n} chosen</source>
        <translation>{n} gewählt</translation>
    </message>
    <message>
        <source>{n} dated threshold; in force today: LT1 and LT2 {values}. Ctrl+T shows them as a table.</source>
        <translation>{n} datierte Schwelle; heute gültig: LT1 und LT2 {values}. Strg+T zeigt sie als Tabelle.</translation>
    </message>
    <message>
        <source>{n} dated thresholds</source>
        <translation>{n} datierte Schwellen</translation>
    </message>
    <message>
        <source>{n} dated thresholds; in force today: LT1 and LT2 {values}. Ctrl+T shows them as a table.</source>
        <translation>{n} datierte Schwellen; heute gültig: LT1 und LT2 {values}. Strg+T zeigt sie als Tabelle.</translation>
    </message>
    <message>
        <source>{n} day</source>
        <translation>{n} Tag</translation>
    </message>
    <message>
        <source>{n} day off</source>
        <translation>{n} freier Tag</translation>
    </message>
    <message>
        <source>{n} days</source>
        <translation>{n} Tage</translation>
    </message>
    <message>
        <source>{n} days off</source>
        <translation>{n} freie Tage</translation>
    </message>
    <message>
        <source>{n} effort said</source>
        <translation>{n} empfundene Anstrengung</translation>
    </message>
    <message>
        <source>{n} efforts said</source>
        <translation>{n} empfundene Anstrengungen</translation>
    </message>
    <message>
        <source>{n} file and {folders} would be added</source>
        <translation>{n} Datei und {folders} würden hinzugefügt</translation>
    </message>
    <message>
        <source>{n} file new</source>
        <translation>{n} Datei neu</translation>
    </message>
    <message>
        <source>{n} file would be added</source>
        <translation>{n} Datei würde hinzugefügt</translation>
    </message>
    <message>
        <source>{n} files and {folders} would be added</source>
        <translation>{n} Dateien und {folders} würden hinzugefügt</translation>
    </message>
    <message>
        <source>{n} files new</source>
        <translation>{n} Dateien neu</translation>
    </message>
    <message>
        <source>{n} files would be added</source>
        <translation>{n} Dateien würden hinzugefügt</translation>
    </message>
    <message>
        <source>{n} folders</source>
        <translation>{n} Ordner</translation>
    </message>
    <message>
        <source>{n} folders would be added</source>
        <translation>{n} Ordner würden hinzugefügt</translation>
    </message>
    <message>
        <source>{n} found</source>
        <translation>{n} gefunden</translation>
    </message>
    <message>
        <source>{n} gap of {days} days or more.</source>
        <translation>{n} Lücke von {days} Tagen oder mehr.</translation>
    </message>
    <message>
        <source>{n} gaps of {days} days or more.</source>
        <translation>{n} Lücken von {days} Tagen oder mehr.</translation>
    </message>
    <message>
        <source>{n} h</source>
        <translation>{n} h</translation>
    </message>
    <message>
        <source>{n} hard days, usually {apart} days apart, 1 time on two days running.</source>
        <translation>{n} harte Tage, meist {apart} Tage auseinander, 1-mal an zwei Tagen nacheinander.</translation>
    </message>
    <message>
        <source>{n} hard days, usually {apart} days apart, {close} times on two days running.</source>
        <translation>{n} harte Tage, meist {apart} Tage auseinander, {close}-mal an zwei Tagen nacheinander.</translation>
    </message>
    <message>
        <source>{n} hard days, usually {apart} days apart.</source>
        <translation>{n} harte Tage, meist {apart} Tage auseinander.</translation>
    </message>
    <message>
        <source>{n} hard effort of 2 to 20 minutes: {fewest} are needed, short and long ones.</source>
        <translation>{n} harte Belastung von 2 bis 20 Minuten: gebraucht werden {fewest}, kurze und lange.</translation>
    </message>
    <message>
        <source>{n} hard efforts of 2 to 20 minutes: {fewest} are needed, short and long ones.</source>
        <translation>{n} harte Belastungen von 2 bis 20 Minuten: gebraucht werden {fewest}, kurze und lange.</translation>
    </message>
    <message>
        <source>{n} hour</source>
        <translation>{n} Stunde</translation>
    </message>
    <message>
        <source>{n} hour {minutes}</source>
        <translation>{n} Stunde {minutes}</translation>
    </message>
    <message>
        <source>{n} hours</source>
        <translation>{n} Stunden</translation>
    </message>
    <message>
        <source>{n} hours {minutes}</source>
        <translation>{n} Stunden {minutes}</translation>
    </message>
    <message>
        <source>{n} joined, cut or typed</source>
        <translation>{n} verbunden, geteilt oder getippt</translation>
    </message>
    <message>
        <source>{n} joined, cut or typed otherwise here and left so</source>
        <translation>{n} hier anders verbunden, geteilt oder getippt und so gelassen</translation>
    </message>
    <message>
        <source>{n} kind</source>
        <translation>{n} Art</translation>
    </message>
    <message>
        <source>{n} kinds</source>
        <translation>{n} Arten</translation>
    </message>
    <message>
        <source>{n} left out</source>
        <translation>{n} weggelassen</translation>
    </message>
    <message>
        <source>{n} long runs stayed at easy pace with mean heart rate over LT1 ({beats} /min): {days}. Warm days, tiredness, illness, or an LT1 that is too fast.</source>
        <translation>{n} lange Läufe blieben bei lockerem Tempo mit mittlerer Herzfrequenz über LT1 ({beats} /min): {days}. Warme Tage, Müdigkeit, Krankheit oder ein zu schnelles LT1.</translation>
    </message>
    <message>
        <source>{n} min</source>
        <translation>{n} min</translation>
    </message>
    <message>
        <source>{n} minute</source>
        <translation>{n} Minute</translation>
    </message>
    <message>
        <source>{n} minutes</source>
        <translation>{n} Minuten</translation>
    </message>
    <message>
        <source>{n} new</source>
        <translation>{n} neu</translation>
    </message>
    <message>
        <source>{n} new with {runs} runs</source>
        <translation>{n} neu mit {runs} Läufen</translation>
    </message>
    <message>
        <source>{n} not judged</source>
        <translation>{n} nicht beurteilt</translation>
    </message>
    <message>
        <source>{n} not read</source>
        <translation>{n} nicht gelesen</translation>
    </message>
    <message>
        <source>{n} note</source>
        <translation>{n} Notiz</translation>
    </message>
    <message>
        <source>{n} notes</source>
        <translation>{n} Notizen</translation>
    </message>
    <message>
        <source>{n} of other sports</source>
        <translation>{n} aus anderen Sportarten</translation>
    </message>
    <message>
        <source>{n} of {count}</source>
        <translation>{n} von {count}</translation>
    </message>
    <message>
        <source>{n} of {count} shown</source>
        <translation>{n} von {count} gezeigt</translation>
    </message>
    <message>
        <source>{n} of {count}: {title}</source>
        <translation>{n} von {count}: {title}</translation>
    </message>
    <message>
        <source>{n} of {whole}</source>
        <translation>{n} von {whole}</translation>
    </message>
    <message>
        <source>{n} of {whole} blocks fell short of their easy share</source>
        <translation>{n} von {whole} Blöcken blieben unter ihrem Anteil locker</translation>
    </message>
    <message>
        <source>{n} of {whole} by estimated thresholds</source>
        <translation>{n} von {whole} nach geschätzten Schwellen</translation>
    </message>
    <message>
        <source>{n} of {whole} from one starting place</source>
        <translation>{n} von {whole} vom selben Startort</translation>
    </message>
    <message>
        <source>{n} passed over</source>
        <translation>{n} übergangen</translation>
    </message>
    <message>
        <source>{n} piece not understood: {first}</source>
        <translation>{n} Stück nicht verstanden: {first}</translation>
    </message>
    <message>
        <source>{n} pieces not understood: {first}</source>
        <translation>{n} Stücke nicht verstanden: {first}</translation>
    </message>
    <message>
        <source>{n} pieces not understood: {first}; and {more} more.</source>
        <translation>{n} Stücke nicht verstanden: {first}; und {more} weitere.</translation>
    </message>
    <message>
        <source>{n} planned session</source>
        <translation>{n} geplante Einheit</translation>
    </message>
    <message>
        <source>{n} planned sessions</source>
        <translation>{n} geplante Einheiten</translation>
    </message>
    <message>
        <source>{n} race</source>
        <translation>{n} Rennen</translation>
    </message>
    <message>
        <source>{n} races</source>
        <translation>{n} Rennen</translation>
    </message>
    <message>
        <source>{n} repetition</source>
        <translation>{n} Wiederholung</translation>
    </message>
    <message>
        <source>{n} repetitions</source>
        <translation>{n} Wiederholungen</translation>
    </message>
    <message>
        <source>{n} run</source>
        <translation>{n} Lauf</translation>
    </message>
    <message>
        <source>{n} run found</source>
        <translation>{n} Lauf gefunden</translation>
    </message>
    <message>
        <source>{n} run found, {time} left</source>
        <translation>{n} Lauf gefunden, noch {time}</translation>
    </message>
    <message>
        <source>{n} run was taken in by an earlier version.</source>
        <translation>{n} Lauf wurde von einer früheren Version eingelesen.</translation>
    </message>
    <message>
        <source>{n} run with {time} was judged before causes were kept. It is judged again, by the same thresholds, to look into it.</source>
        <translation>{n} Lauf mit {time} wurde beurteilt, bevor Ursachen aufbewahrt wurden. Zum Ansehen wird er nach denselben Schwellen noch einmal beurteilt.</translation>
    </message>
    <message>
        <source>{n} runs</source>
        <translation>{n} Läufe</translation>
    </message>
    <message>
        <source>{n} runs are judged anew</source>
        <translation>{n} Läufe werden neu beurteilt</translation>
    </message>
    <message>
        <source>{n} runs found</source>
        <translation>{n} Läufe gefunden</translation>
    </message>
    <message>
        <source>{n} runs found, {time} left</source>
        <translation>{n} Läufe gefunden, noch {time}</translation>
    </message>
    <message>
        <source>{n} runs from {first} to {last}, {distance} in {time}.</source>
        <translation>{n} Läufe von {first} bis {last}, {distance} in {time}.</translation>
    </message>
    <message>
        <source>{n} runs were taken in by an earlier version.</source>
        <translation>{n} Läufe wurden von einer früheren Version eingelesen.</translation>
    </message>
    <message>
        <source>{n} runs with {time} were judged before causes were kept. They are judged again, by the same thresholds, to look into them.</source>
        <translation>{n} Läufe mit {time} wurden beurteilt, bevor Ursachen aufbewahrt wurden. Zum Ansehen werden sie nach denselben Schwellen noch einmal beurteilt.</translation>
    </message>
    <message>
        <source>{n} said otherwise here</source>
        <translation>{n} hier anders angegeben</translation>
    </message>
    <message>
        <source>{n} season file</source>
        <translation>{n} Saisondatei</translation>
    </message>
    <message>
        <source>{n} season files</source>
        <translation>{n} Saisondateien</translation>
    </message>
    <message>
        <source>{n} second</source>
        <translation>{n} Sekunde</translation>
    </message>
    <message>
        <source>{n} seconds</source>
        <translation>{n} Sekunden</translation>
    </message>
    <message>
        <source>{n} session, all kept on this computer</source>
        <translation>{n} Einheit, alle auf diesem Rechner</translation>
    </message>
    <message>
        <source>{n} session, {other} of other sports apart, all kept on this computer</source>
        <translation>{n} Einheit, dazu {other} aus anderen Sportarten, alle auf diesem Rechner</translation>
    </message>
    <message>
        <source>{n} sessions, all kept on this computer</source>
        <translation>{n} Einheiten, alle auf diesem Rechner</translation>
    </message>
    <message>
        <source>{n} sessions, {other} of other sports apart, all kept on this computer</source>
        <translation>{n} Einheiten, dazu {other} aus anderen Sportarten, alle auf diesem Rechner</translation>
    </message>
    <message>
        <source>{n} sets of {inner}?</source>
        <translation>{n} Serien von {inner}?</translation>
    </message>
    <message>
        <source>{n} start</source>
        <translation>{n} Startzeit</translation>
    </message>
    <message>
        <source>{n} starts</source>
        <translation>{n} Startzeiten</translation>
    </message>
    <message>
        <source>{n} steps are too few: {fewest} at least tell a curve</source>
        <translation>{n} Stufen sind zu wenige: mindestens {fewest} ergeben eine Kurve</translation>
    </message>
    <message>
        <source>{n} stretch</source>
        <translation>{n} Abschnitt</translation>
    </message>
    <message>
        <source>{n} stretch as you said.</source>
        <translation>{n} Abschnitt nach deinen Worten.</translation>
    </message>
    <message>
        <source>{n} stretches</source>
        <translation>{n} Abschnitte</translation>
    </message>
    <message>
        <source>{n} stretches as you said.</source>
        <translation>{n} Abschnitte nach deinen Worten.</translation>
    </message>
    <message>
        <source>{n} such runs.</source>
        <translation>{n} solche Läufe.</translation>
    </message>
    <message>
        <source>{n} test</source>
        <translation>{n} Test</translation>
    </message>
    <message>
        <source>{n} tests</source>
        <translation>{n} Tests</translation>
    </message>
    <message>
        <source>{n} threshold</source>
        <translation>{n} Schwelle</translation>
    </message>
    <message>
        <source>{n} thresholds</source>
        <translation>{n} Schwellen</translation>
    </message>
    <message>
        <source>{n} times</source>
        <translation>{n}-mal</translation>
    </message>
    <message>
        <source>{n} to look at</source>
        <translation>{n} anzusehen</translation>
    </message>
    <message>
        <source>{n} week</source>
        <translation>{n} Woche</translation>
    </message>
    <message>
        <source>{n} week to the race</source>
        <translation>{n} Woche bis zum Rennen</translation>
    </message>
    <message>
        <source>{n} week, {days}</source>
        <translation>{n} Woche, {days}</translation>
    </message>
    <message>
        <source>{n} weeks</source>
        <translation>{n} Wochen</translation>
    </message>
    <message>
        <source>{n} weeks after base; {common} is common.</source>
        <translation>{n} Wochen nach der Grundlage; üblich sind {common}.</translation>
    </message>
    <message>
        <source>{n} weeks both times</source>
        <translation>beide Male {n} Wochen</translation>
    </message>
    <message>
        <source>{n} weeks to the race</source>
        <translation>{n} Wochen bis zum Rennen</translation>
    </message>
    <message>
        <source>{n} weeks, {days}</source>
        <translation>{n} Wochen, {days}</translation>
    </message>
    <message>
        <source>{n} {times} about {length}</source>
        <translation>{n} {times} etwa {length}</translation>
    </message>
    <message>
        <source>{n} × {metres} m on {day} {month} stands in a base block; common practice keeps fast ones at {longest} or shorter there.</source>
        <translation>{n} × {metres} m am {day}. {month} steht in einem Grundlagenblock; übliche Praxis hält schnelle dort bei {longest} oder kürzer.</translation>
    </message>
    <message>
        <source>{old} to {new}</source>
        <translation>{old} zu {new}</translation>
    </message>
    <message>
        <source>{one} or {other} times?</source>
        <translation>{one}- oder {other}-mal?</translation>
    </message>
    <message>
        <source>{pace} on level ground</source>
        <translation>{pace} auf ebenem Boden</translation>
    </message>
    <message>
        <source>{part}, {n} times</source>
        <translation>{part}, {n}-mal</translation>
    </message>
    <message>
        <source>{part}: {time}, {distance}, of it {shades}.</source>
        <translation>{part}: {time}, {distance}, davon {shades}.</translation>
    </message>
    <message>
        <source>{part}: {time}, {distance}.</source>
        <translation>{part}: {time}, {distance}.</translation>
    </message>
    <message>
        <source>{path} is no record: it cannot be opened as one.</source>
        <translation>{path} ist keine Akte: sie lässt sich nicht als solche öffnen.</translation>
    </message>
    <message>
        <source>{percent} % of the fast metres in the week of {day} {month} were run on one day; spread, each day stays lighter.</source>
        <translation>{percent} % der schnellen Meter in der Woche vom {day}. {month} wurden an einem Tag gelaufen; verteilt bleibt jeder Tag leichter.</translation>
    </message>
    <message>
        <source>{percent} % sure</source>
        <translation>{percent} % sicher</translation>
    </message>
    <message>
        <source>{problem} Write such as 186.</source>
        <translation>{problem} Schreibe etwa 186.</translation>
    </message>
    <message>
        <source>{races}, as recorded. One race tells little; course and weather differ.</source>
        <translation>{races}, wie aufgezeichnet. Ein Rennen sagt wenig; Strecke und Wetter sind verschieden.</translation>
    </message>
    <message>
        <source>{race} in {time}</source>
        <translation>{race} in {time}</translation>
    </message>
    <message>
        <source>{race}, {day}, goal {goal}.</source>
        <translation>{race}, {day}, Ziel {goal}.</translation>
    </message>
    <message>
        <source>{race}, {day}.</source>
        <translation>{race}, {day}.</translation>
    </message>
    <message>
        <source>{reading}? Not judged until you say</source>
        <translation>{reading}? Nicht beurteilt, bis du es sagst</translation>
    </message>
    <message>
        <source>{runs} in {n} week</source>
        <translation>{runs} in {n} Woche</translation>
    </message>
    <message>
        <source>{runs} in {n} weeks</source>
        <translation>{runs} in {n} Wochen</translation>
    </message>
    <message>
        <source>{run} of {hours} planned</source>
        <translation>{run} von {hours} geplant</translation>
    </message>
    <message>
        <source>{seconds} s/km apart</source>
        <translation>{seconds} s/km auseinander</translation>
    </message>
    <message>
        <source>{seconds} s/mile apart</source>
        <translation>{seconds} s/Meile auseinander</translation>
    </message>
    <message>
        <source>{shares}; index not defined</source>
        <translation>{shares}; Index nicht bestimmt</translation>
    </message>
    <message>
        <source>{shares}; index {index}</source>
        <translation>{shares}; Index {index}</translation>
    </message>
    <message>
        <source>{shares}; index {index} (polarised above 2.00)</source>
        <translation>{shares}; Index {index} (polarisiert über 2,00)</translation>
    </message>
    <message>
        <source>{share} easy</source>
        <translation>{share} locker</translation>
    </message>
    <message>
        <source>{share} easy wanted</source>
        <translation>{share} locker gewünscht</translation>
    </message>
    <message>
        <source>{share} easy, short of {wanted}</source>
        <translation>{share} locker, unter den gewünschten {wanted}</translation>
    </message>
    <message>
        <source>{share} of the middle was meant</source>
        <translation>{share} der Mitte waren beabsichtigt</translation>
    </message>
    <message>
        <source>{share} of the running was easy</source>
        <translation>{share} des Laufens waren locker</translation>
    </message>
    <message>
        <source>{share} wanted</source>
        <translation>Soll {share}</translation>
    </message>
    <message>
        <source>{short} at a time spend {less} near the highest uptake, {long} {more}. Broken short, a set can come back in 2 or 3 days; in long pieces it needs longer (common practice).</source>
        <translation>{short} am Stück sind {less} nahe der höchsten Aufnahme, {long} {more}. Kurz zerlegt kann eine Serie nach 2 oder 3 Tagen wiederkommen; in langen Stücken braucht sie länger (übliche Praxis).</translation>
    </message>
    <message>
        <source>{source}, in force from {day} {month} {year}</source>
        <translation>{source}, gültig ab {day}. {month} {year}</translation>
    </message>
    <message>
        <source>{source}, {day}, {n} week old</source>
        <translation>{source}, {day}, {n} Woche alt</translation>
    </message>
    <message>
        <source>{source}, {day}, {n} weeks old</source>
        <translation>{source}, {day}, {n} Wochen alt</translation>
    </message>
    <message>
        <source>{speed} km/h</source>
        <translation>{speed} km/h</translation>
    </message>
    <message>
        <source>{sport}: kept, not counted as running</source>
        <translation>{sport}: aufbewahrt, nicht als Laufen gezählt</translation>
    </message>
    <message>
        <source>{start} to {end}</source>
        <translation>{start} bis {end}</translation>
    </message>
    <message>
        <source>{stretch}: {easy} per cent easy, {moderate} moderate, {hard} hard; wanted {wanted}.</source>
        <translation>{stretch}: {easy} Prozent locker, {moderate} mittel, {hard} hart; Soll {wanted}.</translation>
    </message>
    <message>
        <source>{text} is a time; a number is wanted here</source>
        <translation>{text} ist eine Zeit; hier wird eine Zahl gebraucht</translation>
    </message>
    <message>
        <source>{theirs}&apos;s record into {mine}&apos;s</source>
        <translation>Akte von {theirs} in die von {mine}</translation>
    </message>
    <message>
        <source>{time} at {pace}</source>
        <translation>{time} bei {pace}</translation>
    </message>
    <message>
        <source>{time} could not be judged</source>
        <translation>{time} konnten nicht beurteilt werden</translation>
    </message>
    <message>
        <source>{time} easy</source>
        <translation>{time} locker</translation>
    </message>
    <message>
        <source>{time} hard</source>
        <translation>{time} hart</translation>
    </message>
    <message>
        <source>{time} in {n} run</source>
        <translation>{time} in {n} Lauf</translation>
    </message>
    <message>
        <source>{time} in {n} runs</source>
        <translation>{time} in {n} Läufen</translation>
    </message>
    <message>
        <source>{time} moderate</source>
        <translation>{time} mittel</translation>
    </message>
    <message>
        <source>{time} moderate in {n} week</source>
        <translation>{time} mittel in {n} Woche</translation>
    </message>
    <message>
        <source>{time} moderate in {n} week, {meant} of it meant</source>
        <translation>{time} mittel in {n} Woche, davon {meant} beabsichtigt</translation>
    </message>
    <message>
        <source>{time} moderate in {n} weeks</source>
        <translation>{time} mittel in {n} Wochen</translation>
    </message>
    <message>
        <source>{time} moderate in {n} weeks, {meant} of it meant</source>
        <translation>{time} mittel in {n} Wochen, davon {meant} beabsichtigt</translation>
    </message>
    <message>
        <source>{time} not judged</source>
        <translation>{time} nicht beurteilt</translation>
    </message>
    <message>
        <source>{time} not running</source>
        <translation>{time} nicht gelaufen</translation>
    </message>
    <message>
        <source>{time} of running could not be judged.</source>
        <translation>{time} Laufen konnten nicht beurteilt werden.</translation>
    </message>
    <message>
        <source>{time} of the middle was not meant; run easy, that would do.</source>
        <translation>{time} der Mitte waren nicht beabsichtigt; locker gelaufen würde das reichen.</translation>
    </message>
    <message>
        <source>{time} planned</source>
        <translation>{time} geplant</translation>
    </message>
    <message>
        <source>{time} run</source>
        <translation>{time} gelaufen</translation>
    </message>
    <message>
        <source>{time} too little easy.</source>
        <translation>{time} locker zu wenig.</translation>
    </message>
    <message>
        <source>{time} was not running.</source>
        <translation>{time} wurde nicht gelaufen.</translation>
    </message>
    <message>
        <source>{time}, {share} easy</source>
        <translation>{time}, {share} locker</translation>
    </message>
    <message>
        <source>{total}, all 100 m or shorter</source>
        <translation>{total}, alle 100 m oder kürzer</translation>
    </message>
    <message>
        <source>{total}, all 200 m or shorter</source>
        <translation>{total}, alle 200 m oder kürzer</translation>
    </message>
    <message>
        <source>{total}, all 300 m or shorter</source>
        <translation>{total}, alle 300 m oder kürzer</translation>
    </message>
    <message>
        <source>{total}, all 400 m or shorter</source>
        <translation>{total}, alle 400 m oder kürzer</translation>
    </message>
    <message>
        <source>{total}, {longer} in long ones</source>
        <translation>{total}, {longer} in langen</translation>
    </message>
    <message>
        <source>{unjudged} of running could not be judged and {other} was not running.</source>
        <translation>{unjudged} Laufen konnten nicht beurteilt werden, und {other} wurde nicht gelaufen.</translation>
    </message>
    <message>
        <source>{watts} W</source>
        <translation>{watts} W</translation>
    </message>
    <message>
        <source>{weekday} was the hard day and the long one</source>
        <translation>{weekday} war der harte Tag und der lange</translation>
    </message>
    <message>
        <source>{weekday} {day}</source>
        <translation>{weekday} {day}</translation>
    </message>
    <message>
        <source>{what}: line {line}.</source>
        <translation>{what}: Zeile {line}.</translation>
    </message>
    <message>
        <source>{what}: lines {lines} and {more} more.</source>
        <translation>{what}: Zeilen {lines} und {more} weitere.</translation>
    </message>
    <message>
        <source>{what}: lines {lines}.</source>
        <translation>{what}: Zeilen {lines}.</translation>
    </message>
    <message>
        <source>{words} and {last}</source>
        <translation>{words} und {last}</translation>
    </message>
    <message>
        <source>{words} and {n} more</source>
        <translation>{words} und {n} weitere</translation>
    </message>
    <message>
        <source>{year}: {text}, {n} session</source>
        <translation>{year}: {text}, {n} Einheit</translation>
    </message>
    <message>
        <source>{year}: {text}, {n} sessions</source>
        <translation>{year}: {text}, {n} Einheiten</translation>
    </message>
    <message>
        <source>“{typed}”: {reading}? (not judged until you say)</source>
        <translation>„{typed}“: {reading}? (nicht beurteilt, bis du es sagst)</translation>
    </message>
    <message>
        <source>“{typed}”: {reading}?, {shade} (not judged until you say)</source>
        <translation>„{typed}“: {reading}?, {shade} (nicht beurteilt, bis du es sagst)</translation>
    </message>
    <message>
        <source>“{word}” in {n} of {whole} notes</source>
        <translation>„{word}“ in {n} von {whole} Notizen</translation>
    </message>
    <message>
        <source>‹ &amp;Previous</source>
        <translation>‹ &amp;Vorige</translation>
    </message>
</context>
<context>
    <name>_000</name>
    <message>
        <source>half marathon</source>
        <translation>Halbmarathon</translation>
    </message>
</context>
<context>
    <name>_097</name>
    <message>
        <source>marathon</source>
        <translation>Marathon</translation>
    </message>
</context>
</TS>
