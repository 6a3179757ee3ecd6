using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“I meant the heart”, “no, that was the upper blade right corner”: the same work or the same fault in another part of the reed, where it can be said of both parts in the same words.</summary>
internal static class ZonePutRight
{
    private static readonly HashSet<string> Surely = ["meant", "mean", "correction", "was", "make", "should", "wrong"];

    private static readonly string[] Works = ["scraped the {0}", "thinned the {0}", "dusted the {0}", "smoothed the {0}", "polished the {0}", "filed the {0}"];

    private static readonly string[] Faults = [.. "thick thin long short wide narrow uneven bumpy steep soft stiff lopsided slanted chipped cracked dirty".Split(' ').SelectMany(word => new[] { $"the {{0}} is too {word}", $"the {{0}} is {word}" })];

    internal static BenchEntry? Of(BenchEntry before, string meant, string said, PhraseContext context)
    {
        if (Before.PlaceOf(before) is not { } old || !Tokenizer.Cut(said).Exists(token => Surely.Contains(token.Text)) || PlacePutRight.Read(meant, alone: false) is not { HasPlace: true, Usual: { } zone } mention || zone == old.Zone)
        {
            return null;
        }

        var there = new Place(zone, mention.OneBlade ?? (mention.Blade is "Both" ? Blades.Both : old.Blades), mention.OneSide ?? (mention.Side is "Both" ? Sides.Both : old.Sides));
        return before switch
        {
            Adjustment work when Moved(work.AdjustmentKind.Value, [.. Counted(work), .. Works], old, there, context) is { } kind =>
                Adjustment.Of(new(kind), there, work.Amount, work.ForFindingId, work.ForTheSakeOf, PlacePutRight.Reworded(work, said)) is Outcome<Adjustment>.Done(var done) ? done : null,
            Finding { Relation: null } found when Moved(found.FindingKind.Value, Faults, old, there, context) is { } kind =>
                Finding.Of(new(kind), found.Character, there, found.Shape, null, null, found.KnownBy, found.Certainty, found.Arose, PlacePutRight.With(found.Words, said)) is Outcome<Finding>.Done(var done) ? done : null,
            _ => null,
        };
    }

    private static string[] Counted(Adjustment work) => work.AmountStrokes is { } strokes ? [$"{strokes} strokes off the {{0}}"] : [];

    // What these words are of the one part, and of the other.
    private static string? Moved(string kind, string[] ways, Place old, Place there, PhraseContext context) =>
        ways.Where(way => Heard(way, old, context) == kind).Select(way => Heard(way, there, context)).FirstOrDefault(heard => heard is not null and not "something-else");

    private static string? Heard(string way, Place place, PhraseContext context) =>
        PhraseReader.Read(string.Format(System.Globalization.CultureInfo.InvariantCulture, way, place.Zone.Name()), context with { Log = BenchLog.Empty }).Entries is [{ Slots: { Kind: { } kind, Zone: { } zone } }] && zone == place.Zone ? kind : null;
}
