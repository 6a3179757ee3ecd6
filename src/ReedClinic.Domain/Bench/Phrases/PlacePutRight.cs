using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Sorry, meant upper”, “no wait, that was the bottom blade”: an entry, with the blade or the side that was meant.</summary>
public static class PlacePutRight
{
    // Beside these “right” is what agrees.
    private static readonly HashSet<string> Around = [.. "no nope sorry oops whoops wait actually well ok okay yes yeah that it this is was 's make all just only so hang hold on".Split(' ')];

    /// <summary>The entry as it was meant.</summary>
    /// <param name="text">What was typed or said; at most <see cref="PhraseReader.LongestPhrase"/> characters are looked at.</param>
    /// <param name="before">The entry that it may put right: work, a finding or a place left alone.</param>
    /// <param name="alone">True where the words must say by themselves that something is put right; false where that is known, as in a correction.</param>
    /// <returns>The same entry in the place that was meant; null where the words say anything else, or not which place.</returns>
    public static BenchEntry? Of(string? text, BenchEntry? before, bool alone)
    {
        if (before is null || Before.PlaceOf(before) is not { } place || PlainText.Tidy(text) is not { Length: <= PhraseReader.LongestPhrase } said || Read(said, alone) is not { } meant || meant.OneSide is not null && before is Adjustment pressed && Sideless.Is(pressed) || Moved(place, meant) is not { } there)
        {
            return null;
        }

        return before switch
        {
            Adjustment work => Done(Adjustment.Of(work.AdjustmentKind, there, work.Amount, work.ForFindingId, work.ForTheSakeOf, Reworded(work, said))),
            Finding { Relation: null } found => Done(Finding.Of(found.FindingKind, found.Character, there, found.Shape, null, null, found.KnownBy, found.Certainty, found.Arose, OwnId.Is(found.FindingKind.Value) ? found.Words : With(found.Words, said))),
            LeaveAlone left => Done(LeaveAlone.Of(there, With(left.Words, said))),
            _ => null,
        };
    }

    // The words in which it was said may name the wrong place: what put them right stays beside them.
    internal static string? With(string? words, string said) => words is null ? null : $"{words} ({said})";

    // What was agreed is said again by whoever corrects, and a name of the studio’s own stays as it is.
    internal static string? Reworded(Adjustment work, string said) => OwnId.Is(work.AdjustmentKind.Value) ? Agreement.Without(work.Words) : With(Agreement.Without(work.Words), said);

    private static BenchEntry? Done<T>(Outcome<T> made)
        where T : BenchEntry => made is Outcome<T>.Done(var entry) ? entry : null;

    // Words that put right and a place, and nothing else.
    internal static Mention? Read(string text, bool alone)
    {
        var tokens = Tokenizer.Cut(text);
        if (tokens.Count == 0 || IsCounted(tokens))
        {
            return null;
        }

        var segments = Splitter.Cut(tokens, Scanner.Scan(tokens), null);
        if (segments.Any(segment => segment.Asked || !Enumerable.Range(segment.First, segment.End - segment.First).All(at => IsOfPlace(segment, at))) || alone && !PutsRight(tokens))
        {
            return null;
        }

        var mentions = segments.SelectMany(PlaceReader.Read).ToList();
        var mention = mentions.Aggregate(new Mention(), (all, one) => all with { Zone = one.Zone ?? all.Zone, Region = one.Region ?? all.Region, Blade = one.Blade ?? all.Blade, Side = one.Side ?? all.Side });
        mention = mention with { Blade = mention.Blade ?? Bare(tokens, "upper", "top", "Upper") ?? Bare(tokens, "lower", "bottom", "Lower"), Side = mention.Side ?? Bare(tokens, "left", "left", "Left") ?? Bare(tokens, "right", "right", "Right") };
        var wrong = tokens.Zip(tokens.Skip(1)).FirstOrDefault(pair => pair.First.Text is "wrong").Second.Text;
        return wrong switch
        {
            "blade" => mention with { Blade = mention.Blade ?? "Other" },
            "side" or "corner" or "window" => mention with { Side = mention.Side ?? "Other" },
            _ => mention,
        };
    }

    // “One on each side” says how much, too.
    private static bool IsCounted(List<Token> tokens) => tokens.Zip(tokens.Skip(1)).Any(pair => pair.First.Is("one") && pair.Second.Text is "on" or "off" or "each" or "per" or "a" or "stroke" or "either" or "from");

    // “Make that upper” and “should have been upper” put right; “lower should be the same” says what is to come.
    private static bool PutsRight(List<Token> tokens) => !tokens.Exists(token => token.Is("same")) && (tokens.Exists(token => RightWords.Loosely.Contains(token.Text))
        || tokens.Zip(tokens.Skip(1)).Any(pair => (pair.First.Text, pair.Second.Text) is ("make", "that" or "it") or ("should", "have" or "say")));

    // “No, that’s right” agrees, “just right” praises, and “it was left” tells what stayed: a side is “the right”, “the right one”, “just the right”, “right not left”.
    internal static bool Agrees(List<Token> tokens, bool bare = true) => tokens.Where((token, at) => token.Text is "right" or "left" && IsJust(tokens, at)).Any()
        || tokens.Zip(tokens.Skip(1)).Any(pair => pair.Second.Text is "right" or "left" && pair.First.Text is "that" or "it" or "is" or "was" or "'s" or "all" or "be" or "been" && !(pair.Second.Is("left") && tokens.Exists(token => token.Is("make"))))
            && !tokens.Exists(token => IsOfSide(token.Text) || token.Text is "not" or "meant" or "mean")
        || bare && tokens.Exists(token => token.Is("right")) && tokens.TrueForAll(token => token.Kind is TokenKind.Break || token.Is("right") || Around.Contains(token.Text));

    // “Just right”, “only just right”, and not “just right side”, “only right, not left”.
    private static bool IsJust(List<Token> tokens, int at) => at > 0 && tokens[at - 1].Text is "just" or "only" or "about" or "quite"
        && !(at + 1 < tokens.Count && IsOfSide(tokens[at + 1].Text) && tokens[at + 1].Text is not ("upper" or "lower")) && tokens.FindIndex(at, token => token.Is("not")) < 0;

    private static bool IsOfSide(string word) => word is "side" or "corner" or "window" or "blade" or "one" or "half" or "rail" or "edge" or "upper" or "lower";

    private static string? Bare(List<Token> tokens, string one, string other, string value) => tokens.Any(token => token.Is(one) || token.Is(other)) ? value : null;

    private static bool IsOfPlace(Segment segment, int at) => segment.Tokens[at].Kind is TokenKind.Break or TokenKind.Symbol || segment.Word(at).Length == 0 || RightWords.Beside.Contains(segment.Word(at)) || segment.Word(at) is "upper" or "lower" or "top" or "bottom" or "left" or "right" or "other" or "same" or "blade" or "side"
        || segment.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade or Cat.Filler or Cat.Fix);

    // The same part of the reed, elsewhere; another part is another thing.
    private static Place? Moved(Place place, Mention meant)
    {
        if (meant is { Blade: null, Side: null } || meant.HasPlace && meant.Usual != place.Zone && PlaceReader.Of(meant.Usual!.Value) != meant.Region || meant.Region is { } region && PlaceReader.Of(place.Zone) != region)
        {
            return null;
        }

        Blades? blades = meant.Blade switch { "Upper" => Blades.Upper, "Lower" => Blades.Lower, "Both" => Blades.Both, "Other" => place.Blades switch { Blades.Upper => Blades.Lower, Blades.Lower => Blades.Upper, _ => null }, _ => place.Blades };
        Sides? sides = meant.Side switch { "Left" => Sides.Left, "Right" => Sides.Right, "Both" => Sides.Both, "Other" => place.Sides switch { Sides.Left => Sides.Right, Sides.Right => Sides.Left, _ => null }, _ => place.Sides };
        return blades is { } blade && sides is { } side ? new Place(place.Zone, blade, side) : null;
    }
}
