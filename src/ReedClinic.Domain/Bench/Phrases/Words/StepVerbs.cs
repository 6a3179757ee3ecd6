namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>One form for what notes and reeds do, whatever the tense: “came”, “comes” and “coming” are “come”.</summary>
internal static class StepVerbs
{
    private const string Irregular = "come came; speak spoke spoken; hold held; break broke broken; fall fell fallen; lose lost; take took taken; keep kept; stick stuck; sing sang sung; ring rang rung; swim swam swum; "
        + "shake shook shaken; fly flew flown; draw drew drawn; give gave given; get got gotten; begin began begun; stand stood; sit sat; sink sank sunk; stay; do did done; find found; feel felt; blow blew blown; run ran; spread; split; shut; cut; let; "
        + "slide slid; bend bent; hang hung; build built; rise rose risen; drive drove driven; creep crept; burst; bleed bled; spring sprang sprung; stop stopped stopping; drop dropped dropping; pop popped popping; sag sagged sagging; lag lagged lagging; "
        + "drag dragged dragging; plop plopped plopping; slip slipped slipping; clip clipped clipping; dip dipped dipping; flip flipped flipping; prop propped propping; plod plodded plodding; thud thudded thudding; die died dying; lie lay lying; quit; honk";

    private const string Regular = "start crack wobble waver wander drift hesitate refuse respond answer sound play thump clunk splutter stutter crow rattle buzz leak hiss fade vanish disappear collapse choke waste fail pull push shove nudge kick force coax nurse help support lip "
        + "tumble jump click ping sparkle settle steady lock flicker flutter tremble sway swing roam float slump droop flatten sharpen flare blare blast bray scream shout roar honk bolt explode seal suck meet touch close open join follow arrive kick enter sneak chime rumble pour purr "
        + "fluff smudge smear blur miss stay move budge waste whistle squeak squeal growl grumble need want peep cackle bounce leap wail yelp bark croak struggle require please behave cooperate centre anchor nail plant react emerge slot surge swell snap crumble yield burble gurgle cough stammer falter dawdle trail appear";

    private static readonly Dictionary<string, string> Bases = Read();

    /// <summary>The word without its tense; itself when it is none of these.</summary>
    internal static string Base(string word) => Bases.GetValueOrDefault(word, word);

    private static Dictionary<string, string> Read()
    {
        Dictionary<string, string> bases = [];
        foreach (var forms in Irregular.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(verb => verb.Split(' ')).Concat(Regular.Split(' ').Select(verb => (string[])[verb])))
        {
            var verb = forms[0];
            var stem = verb[^1] is 'e' ? verb[..^1] : verb;
            foreach (var form in forms.Concat([verb + (verb[^1] is 's' or 'h' or 'x' or 'o' ? "es" : "s"), stem + "ed", stem + "ing"]))
            {
                bases.TryAdd(form, verb);
            }
        }

        return bases;
    }
}
