# Zustand und Ursache; Merkmale und andere Hinweise mit ihren Antworten.
# Je Antwort: der Wert steht unter seiner Frage; .clause steht allein unter den Gründen;
# .if ergänzt "Es wäre …, wenn …".

condition-open = offen
condition-firm = fest
condition-tight = dicht
condition-shut = verschlossen

cause-pressed = verdichtet
cause-settled = gesackt
cause-cemented = verkittet
cause-natural = natürlich
cause-unclear = unklar
    .beside = Ursache unklar

# Wie jeder Hinweis heißt, und die Frage danach.
clue-comes_away = wie der Boden zerfällt
    .question = Wie löst sich der Boden vor dem Messer?
clue-resistance = Widerstand am Messer
    .question = Worauf trifft das Messer?
clue-pores = Poren
    .question = Wie viele Poren zeigt eine Bruchfläche?
clue-channels = Regenwurm- und Wurzelgänge
    .question = Gibt es Gänge von Regenwürmern oder alten Wurzeln?
clue-roots = Wurzeln
    .question = Was machen die Wurzeln?
clue-patches = Rost- oder Bleichflecken
    .question = Gibt es Rost- oder Bleichflecken?
clue-smell = Geruch
    .question = Wie riecht ein frisches Stück?
clue-clod_in_water = ein trockenes Stück im Wasser
    .question = Was macht ein lufttrockenes Stück im Wasser?
clue-texture = Bodenart
    .question = Was sagt die Fingerprobe?
clue-organic_matter = Humus
    .question = Wie humos ist der Oberboden?
clue-place = Art der Stelle
    .question = Was für eine Stelle ist das?
clue-lies = Lage der Schicht
    .question = Wo liegt die Schicht?
clue-below = die Schicht darunter
    .question = Geht das Messer gleich darunter leichter hinein?
clue-reference = die Vergleichsgrube
    .question = Ist es in der Vergleichsgrube ebenso?
clue-last_loosened = letzte Lockerung
    .question = Wann wurde der Schlag zuletzt gelockert?
clue-last_traffic = schwere Räder
    .question = Wann sind hier zuletzt schwere Räder gefahren?

question-at = { $depths }: { $question }
question-why = entscheidet zwischen { $one } und { $other }
question-with_why = { $question } Das { $why }.
question-kind = „{ $kind }“
question-none = Mehr anzusehen lohnt hier nicht.

comes_away-crumbs = Krümel
    .clause = Krümel
    .if = der Boden in Krümel zerfiele
comes_away-rounded_lumps = rundliche Bröckel
    .clause = rundliche Bröckel
    .if = der Boden in rundliche Bröckel zerfiele
comes_away-sharp_blocks = scharfe Stücke
    .clause = scharfkantige Stücke
    .if = der Boden in scharfkantige Stücke zerfiele
comes_away-flat_plates = flache Platten
    .clause = flache Platten
    .if = der Boden in flache Platten zerfiele
comes_away-one_mass = eine Masse
    .clause = eine einzige Masse
    .if = der Boden als eine einzige Masse herauskäme
comes_away-loose_grains = lose Körner
    .clause = lose Körner
    .if = der Boden in lose Körner zerfiele

resistance-slips_in = gleitet hinein
    .clause = das Messer gleitet hinein
    .if = das Messer leicht hineinginge
resistance-firm_push = fester Druck
    .clause = das Messer braucht festen Druck
    .if = das Messer festen Druck bräuchte
resistance-hard_push = viel Kraft
    .clause = das Messer braucht viel Kraft
    .if = das Messer viel Kraft bräuchte
resistance-stops = bleibt stecken
    .clause = das Messer bleibt stecken
    .if = das Messer stecken bliebe

pores-many = viele
    .clause = viele Poren
    .if = viele Poren zu sehen wären
pores-some = einige
    .clause = einige Poren
    .if = einige Poren zu sehen wären
pores-few = wenige
    .clause = wenige Poren
    .if = wenige Poren zu sehen wären
pores-none = keine
    .clause = keine Poren
    .if = keine Poren zu sehen wären

channels-many = viele
    .clause = viele Gänge
    .if = viele Gänge da wären
channels-some = einige
    .clause = einige Gänge
    .if = einige Gänge da wären
channels-none = keine
    .clause = keine Gänge
    .if = keine Gänge da wären
channels-cut_off = abgeschnitten
    .clause = Gänge abgeschnitten
    .if = die Gänge abgeschnitten wären

roots-through = gehen glatt durch
    .clause = Wurzeln gehen glatt durch
    .if = die Wurzeln glatt durchgingen
roots-in_cracks = nur in Rissen
    .clause = Wurzeln nur in Rissen
    .if = die Wurzeln nur in Rissen liefen
roots-sideways = seitwärts abgelenkt
    .clause = Wurzeln seitwärts abgelenkt
    .if = die Wurzeln seitwärts abgelenkt wären
roots-stopped = enden hier
    .clause = Wurzeln enden hier
    .if = die Wurzeln hier endeten
roots-none_to_judge = keine zum Beurteilen
    .clause = keine Wurzeln zum Beurteilen
    .if = keine Wurzeln zum Beurteilen da wären

patches-none = keine
    .clause = keine Rost- oder Bleichflecken
    .if = keine Rost- oder Bleichflecken da wären
patches-few = wenige
    .clause = wenige Rost- oder Bleichflecken
    .if = wenige Rost- oder Bleichflecken da wären
patches-clear = deutliche
    .clause = deutliche Rost- oder Bleichflecken
    .if = deutliche Rost- oder Bleichflecken da wären

smell-earthy = erdig
    .clause = erdiger Geruch
    .if = der Geruch erdig wäre
smell-none = kein Geruch
    .clause = kein Geruch
    .if = kein Geruch da wäre
smell-sour = sauer, faulig
    .clause = sauer-fauliger Geruch
    .if = der Geruch sauer und faulig wäre

clod_in_water-falls_apart = zerfällt
    .clause = ein trockenes Stück zerfällt im Wasser
    .if = ein trockenes Stück im Wasser zerfiele
clod_in_water-holds = hält
    .clause = ein trockenes Stück hält im Wasser
    .if = ein trockenes Stück im Wasser hielte

texture-sand = Sand
    .clause = Sandboden
    .if = der Boden Sand wäre
texture-light = leicht
    .clause = leichter Boden
    .if = der Boden leicht wäre
texture-silty = schluffig
    .clause = schluffiger Boden
    .if = der Boden schluffig wäre
texture-medium = mittelschwer
    .clause = mittelschwerer Boden
    .if = der Boden mittelschwer wäre
texture-heavy = schwer
    .clause = schwerer Boden
    .if = der Boden schwer wäre

organic_matter-low = wenig
    .clause = wenig Humus
    .if = der Oberboden wenig Humus hätte
organic_matter-medium = üblich
    .clause = üblicher Humusgehalt
    .if = der Oberboden einen üblichen Humusgehalt hätte
organic_matter-high = viel
    .clause = viel Humus
    .if = der Oberboden viel Humus hätte

# .pit benennt eine dort gegrabene Grube.
place-reference = Vergleichsgrube
    .clause = an der Vergleichsstelle
    .if = die Grube an der Vergleichsstelle läge
    .pit = Vergleichsgrube
place-open = Feldinneres
    .clause = im Feldinneren
    .if = die Grube im Feldinneren läge
    .pit = Grube im Feldinneren
place-wheeling = Fahrspur
    .clause = in einer Fahrspur
    .if = die Grube in einer Fahrspur läge
    .pit = Grube in einer Fahrspur
place-headland = Vorgewende
    .clause = auf dem Vorgewende
    .if = die Grube auf dem Vorgewende läge
    .pit = Grube auf dem Vorgewende
place-gateway = Feldeinfahrt
    .clause = in einer Feldeinfahrt
    .if = die Grube in einer Feldeinfahrt läge
    .pit = Grube in einer Feldeinfahrt
place-other = andere Stelle
    .clause = an einer anderen Stelle
    .if = die Grube an einer anderen Stelle läge
    .pit = Grube an einer anderen Stelle

lies-surface = nahe der Oberfläche
    .clause = nahe der Oberfläche
    .if = die Schicht nahe der Oberfläche läge
lies-whole_worked = über die ganze Bearbeitungstiefe
    .clause = über die ganze Bearbeitungstiefe
    .if = die Schicht über die ganze Bearbeitungstiefe reichte
lies-worked_band = Band auf Bearbeitungstiefe
    .clause = Band auf Bearbeitungstiefe
    .if = die Schicht ein Band auf Bearbeitungstiefe wäre
lies-subsoil = unter der Bearbeitungstiefe
    .clause = unter der Bearbeitungstiefe
    .if = die Schicht unter der Bearbeitungstiefe läge

below-easier = leichter
    .clause = gleich darunter geht das Messer leichter hinein
    .if = das Messer gleich darunter leichter hineinginge
below-not_easier = nicht leichter
    .clause = gleich darunter geht das Messer nicht leichter hinein
    .if = das Messer gleich darunter nicht leichter hineinginge

reference-far_worse = nein, hier ist es viel ungünstiger
    .clause = in der Vergleichsgrube viel günstiger
    .if = es in der Vergleichsgrube viel günstiger wäre
reference-worse = nein, hier ist es ungünstiger
    .clause = in der Vergleichsgrube nicht so
    .if = es in der Vergleichsgrube nicht so wäre
reference-same = ja, dort ist es ebenso oder nicht günstiger
    .clause = in der Vergleichsgrube ebenso
    .if = es in der Vergleichsgrube ebenso wäre

last_loosened-recent = in den letzten zwei Jahren
    .clause = in den letzten zwei Jahren gelockert
    .if = in den letzten zwei Jahren gelockert worden wäre
last_loosened-long_ago = länger her
    .clause = seit über zwei Jahren nicht gelockert
    .if = seit über zwei Jahren nicht gelockert worden wäre

last_traffic-recent = in den letzten zwei Jahren
    .clause = schwere Räder in den letzten zwei Jahren
    .if = hier in den letzten zwei Jahren schwere Räder gefahren wären
last_traffic-long_ago = länger her
    .clause = seit über zwei Jahren keine schweren Räder
    .if = hier seit über zwei Jahren keine schweren Räder gefahren wären

# Feuchte der Grubenwand.
face-dry = trocken
    .unreadable = Die Grubenwand war zum Beurteilen zu trocken.
    .described = Die Grubenwand ist trocken.
face-moist = feucht
    .unreadable = Die Grubenwand ließ sich nicht beurteilen.
    .described = Die Grubenwand ist feucht.
face-wet = nass
    .unreadable = Die Grubenwand war zum Beurteilen zu nass.
    .described = Die Grubenwand ist nass.

# Die Ausrollprobe: Boden wird geknetet und zwischen den Händen gerollt.
roll-thread = lässt sich dünn ausrollen
    .at_depth = zu nass zum Lockern, er würde verschmieren
    .at_surface = zu nass zum Befahren
    .if = sich dünn ausrollen ließe
roll-short_lengths = bricht in kurze Stücke
    .at_depth = passend zum Lockern
    .at_surface = trocken genug zum Befahren
    .if = in kurze Stücke bräche
roll-crumbles = zerkrümelt
    .at_depth = trocken, Lockern geht, aber mit hohem Zugkraftbedarf und groben Brocken
    .at_surface = trocken, er trägt die Maschine
    .if = zerkrümelte
roll-will_not_hold = hält nicht zusammen
    .at_depth = hier sagt die Ausrollprobe nichts, die Feuchte anders prüfen
    .at_surface = an der Oberfläche sagt die Ausrollprobe nichts
    .if = nicht zusammenhielte
rolled-depth = Boden aus { $depth } { $does }: { $meaning }.
rolled-surface = Boden von der Oberfläche { $does }: { $meaning }.
