using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Scratch that, two each side”, “half a turn”: how much was done and where at once, or how far a wire was turned, of the work that stands.</summary>
internal static class EachPutRight
{
    private static readonly HashSet<string> Lead = [.. RightWords.Lead, "only", "just", "instead", "so", "ok", "okay", "and", "but"];

    private static readonly HashSet<string> Strokes = ["stroke", "strokes", "pass", "passes", "scrape", "scrapes"];

    private static readonly HashSet<string> Joining = ["off", "on", "from", "at", "in", "to", "of", "the", "for"];

    private static readonly HashSet<string> Each = ["each", "both", "either", "every", "a", "per"];

    private static readonly HashSet<string> Parts = ["half", "quarter", "third", "eighth", "full", "whole", "complete", "single"];

    private static readonly Dictionary<string, Zone?> Ends = new()
    {
        [""] = null,
        ["side"] = null,
        ["sides"] = null,
        ["half"] = null,
        ["halves"] = null,
        ["one"] = null,
        ["blade"] = null,
        ["blades"] = null,
        ["corner"] = Zone.TipCorners,
        ["corners"] = Zone.TipCorners,
        ["window"] = Zone.Windows,
        ["windows"] = Zone.Windows,
        ["wing"] = Zone.TipSides,
        ["wings"] = Zone.TipSides,
        ["shoulder"] = Zone.HeartSides,
        ["shoulders"] = Zone.HeartSides,
    };

    /// <summary>The work with what was said anew; null where the words say anything else.</summary>
    internal static Adjustment? Of(Adjustment work, string said, List<Token> tokens)
    {
        var words = tokens.FindAll(token => token.Kind is not TokenKind.Break);
        var first = words.FindIndex(token => !Lead.Contains(token.Text) || token.Is("a"));
        return first < 0 ? null : work.Zone is Zone.Wire ? Turned(work, said, words, first) : Counted(work, said, words, first);
    }

    private static Adjustment? Counted(Adjustment work, string said, List<Token> words, int first)
    {
        if (work.AmountStrokes is null || Numbers.At(words, first, words.Count) is not { } number || number.Value is < 1 or > Amount.MostStrokes || number.Value != Math.Truncate(number.Value))
        {
            return null;
        }

        var at = Strokes.Contains(Word(words, number.End)) ? number.End + 1 : number.End;
        while (Joining.Contains(Word(words, at)))
        {
            at++;
        }

        var each = Word(words, at);
        var end = Word(words, at + 1);
        if (!Each.Contains(each) || words.Count > at + 2 || each is "a" or "per" && end.Length == 0 || !Ends.TryGetValue(end, out var zone) || zone is not null && zone != work.Zone)
        {
            return null;
        }

        var (blades, sides) = end is "blade" or "blades" || work.Sides is Sides.Both && end.Length == 0 ? (Blades.Both, work.Sides) : (work.Blades, Sides.Both);
        return Made(work, new Place(work.Zone, blades, sides), new Amount((int)number.Value, work.Amount.Millimetres), said);
    }

    // “Half a turn”, “a full turn”, “two turns”.
    private static Adjustment? Turned(Adjustment work, string said, List<Token> words, int first)
    {
        var last = words.Count - 1;
        if (last <= first || words[last].Text is not ("turn" or "turns") || last - first > 3
            || !Enumerable.Range(first, last - first).All(at => words[at].Text is "a" or "an" or "of" || Parts.Contains(words[at].Text) || Numbers.Word(words[at].Text) is not null || words[at].Kind is TokenKind.Number))
        {
            return null;
        }

        return Made(work, work.Place, new Amount(null, null, said[words[first].Start..words[last].End]), said);
    }

    private static Adjustment? Made(Adjustment work, Place place, Amount amount, string said) =>
        Adjustment.Of(work.AdjustmentKind, place, amount, work.ForFindingId, work.ForTheSakeOf, PlacePutRight.Reworded(work, said)) is Outcome<Adjustment>.Done(var done) ? done : null;

    private static string Word(List<Token> words, int at) => at < words.Count ? words[at].Text : "";
}
