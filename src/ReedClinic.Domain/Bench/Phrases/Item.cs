namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What a word or a group of words can stand for. One group may stand for several things.</summary>
internal enum Cat
{
    Zone, Region, Part, Side, Blade, Quality, Good, Verb, Thing, Test, Sound, Wordy, Stroke, Mm, Tenth, Hundredth, Off, More,
    Again, Same, Also, Plan, Habit, Cond, Hedge, May, Not, NoMore, Other, Me, Caused, SeenLater, Leave, Near, Stop, Verdict, Risk,
    RiskClosed, Ended, Taste, Sake, Known, Degree, Than, As, SameAs, Change, Cent, Lean, Natural, Between, Octave, Both, Together,
    Join, Only, Length, Stage, Filler, Fix, Now,
}

/// <summary>Tokens that stand for something.</summary>
/// <param name="Cat">For what kind of thing.</param>
/// <param name="Value">For which.</param>
/// <param name="First">The first token.</param>
/// <param name="End">The token after the last.</param>
/// <param name="Guessed">True when a word was put right by one letter.</param>
internal readonly record struct Item(Cat Cat, string Value, int First, int End, bool Guessed = false)
{
    internal int Count => End - First;

    internal bool Is(Cat cat) => Cat == cat;

    internal bool Is(Cat cat, string value) => Cat == cat && Value == value;
}
