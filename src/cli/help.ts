/** What the program can do, as printed by `ohmward --help`. */
export const HELP = `ohmward: follow a fault current home to its source, and see why a breaker opens or does not.

  ohmward run FILE [options]      run an installation and tell what happens
  ohmward verdicts FILE [options] judge an installation as it stands: fault currents, loops, disconnection times, longest
                                  runs, smallest protective conductors, volts on metal, stray current, with margins
  ohmward repairs FILE [options]  search every smallest set of repairs that makes all rules hold, and say why the
                                  tempting ones do not
  ohmward sweep FILE [options]    run it again and again with one value changed, or two for a map
  ohmward population FILE [...]   let many different people touch what a fault makes live: shares by zone
  ohmward check FILE...           check installations and lessons; prove every lesson with the solver;
                                  a folder stands for the YAML files in it
  ohmward schema [WHAT]           print a JSON Schema: installation (default) or lesson for a file; result (of run),
                                  verdicts, repairs, sweep or population for what is printed with --json
  ohmward --help                  this text

Options of run
  --set CONDITION[=OPTION]        change one condition; may be given many times
                                  --set "line touches the case"   --set "line touches the case=1 ohm"
  --json                          print everything as JSON, described by: ohmward schema result
  --vocabulary WORDS              north-america or iec; otherwise that of the file's region
  --tolerance WHERE               fast, middle (default) or slow: where in its permitted band each device lies
  --until SECONDS                 how long to look; 7200 unless said

Options of verdicts and repairs: --set, --json and --vocabulary, as above.

Options of sweep: --set, --json, and for one value or each of two
  --value PATH                    a number as the file names it: "mixer run.length_m", "own rod.resistance_ohm"
  --from, --to, --steps           its range; 11 steps unless said
  --show WHAT                     what a map shows: opens (default), fault, metal, body, zone or safe

Options of population: --set, --json, --vocabulary, --people (100000 unless said) and --seed

What run, verdicts, repairs, sweep and population print with --json is described by a published schema, as above.

Notes
  Every join in an installation is a joint of 0.5 milliohm and counts in every loop it lies in. To set another:
    joins:
      - { between: [panel.neutral bar, service rod], resistance_ohm: 0.02 }

Exit codes
  0  fine: the question was answered, whatever the answer; a limit not met or a shock that kills is an answer
  1  a file is wrong, or a lesson is not proven
  2  wrong use: unknown command, option, condition or value, nothing to answer about, or a file that cannot be read

A teaching model with typical data. Never test any of this on a live installation: isolate, lock off and prove
dead before you touch. Local codes rule; the work is for licensed people.
`;
