/**
 * The season file that `--new` writes: every field that matters, each with a word on it, ready to plan as it stands.
 * The numbers are invented; the grower puts in their own.
 */
export const SEASON_EXAMPLE: string = `# A season: what grows where, what it is fed with, and when.
# Change what is yours, then see what to do: trug season THIS_FILE
# Lines that begin with # are for people; the ones with a field in them show what else can be said.
kind: season
name: my peppers

crop: sweet pepper
sown: 2027-03-01      # leave it out for bought plants
setOut: 2027-05-15    # planted where they stay
end: 2027-10-10       # last day of the season

# Beds and pots. Those with the same dates and programme are fed together, and recorded under the first one's name.
places:
  - name: pots
    fill: 10 pots 20 L
    plants: 10
  - name: bed
    fill: bed 1.2 m x 2.4 m x 30 cm
    plants: 12

# Two feeds: one until the first flower, another from then on (common practice, no trial behind it).
# The first flower is predicted; once it is seen, say so: trug season THIS_FILE --record "first flower"
programme: two-phase
litresPerPlant: 1 L
# everyDays: 14

# What stands on the shelf: grades from the bags, salts, or ids from a shelf file.
# shelf: shelf.yaml
products: [20-10-20, 5-15-30]
stageProducts:
  leaf: [20-10-20]
  fruit: [5-15-30, 20-10-20]

can: 10 L
scale: 1 g
# spoons: metric

# What the water and the mix bring need not be fed.
# water: N 4 ppm, Ca 60 ppm, Mg 8 ppm
# The mix by its recipe (what its compost gives is reckoned), or by what a label or a test says that it brings.
# mix:
#   recipe: compost 1, perlite 1, coir 1
#   # brings: N 15 g/m3, P2O5 8 g/m3, K2O 40 g/m3
#   over: 120 days

# The most you want to give in the season, and how much of a feed drains out of the pots.
# ceilings:
#   - N 15 g/m2
#   - P2O5 3 g/plant
leaching: 15%

# Daily temperatures (date, min, max) predict the first flower; else say when to expect it.
# weather: weather.csv
# expect:
#   first flower: 20 to 45 days after set out

# What happened is kept beside this file, a line for each thing.
# log: season.log
`;
