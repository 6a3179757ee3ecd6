using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What a letter teaches about one kind of fault: how to see it at home, the stroke, and a plan for the next reed.</summary>
/// <param name="Checks">Two or three tests to do at home, each with what to see or hear.</param>
/// <param name="Stroke">The stroke: where the knife lies, its angle, where it ends; null where no knife is wanted.</param>
/// <param name="Plan">At most five steps for the next reed.</param>
/// <remarks>
/// All of it is common practice, in our own words; nothing in it is cited to a student as a fact. The texts hold alternatives, of
/// which a letter chooses.
/// </remarks>
public sealed record TeachingNote(IReadOnlyList<string> Checks, IReadOnlyList<string>? Stroke, IReadOnlyList<string> Plan)
{
    /// <summary>The most steps of a plan.</summary>
    public const int MostSteps = 5;

    private static readonly Dictionary<FindingKindId, TeachingNote> ByKind = All();

    // What is told with an oboe’s own lengths is told without them of its relatives.
    private static readonly Dictionary<TeachingNote, TeachingNote> OtherInstrument = new(ReferenceEqualityComparer.Instance)
    {
        [TipLessons.Line] = ShortScrapeLessons.Line,
    };

    private static readonly Dictionary<TeachingNote, TeachingNote> ShortScrape = new(ReferenceEqualityComparer.Instance)
    {
        [TipLessons.Line] = ShortScrapeLessons.Line,
        [BodyLessons.Back] = ShortScrapeLessons.Back,
        [BodyLessons.BackKept] = ShortScrapeLessons.BackKept,
        [BodyLessons.HeartKept] = ShortScrapeLessons.HeartKept,
    };

    /// <summary>The note on a kind of fault; a general one where there is none of its own.</summary>
    /// <param name="kind">The kind; null for a lesson that is in words alone.</param>
    /// <param name="scrape">How the reeds are scraped: a short scrape has neither windows nor rails. A long one where nobody said.</param>
    /// <param name="instrument">What the reeds are for; an oboe when nobody said.</param>
    public static TeachingNote For(FindingKindId? kind, ScrapeStyle? scrape = null, Instrument? instrument = null) =>
        kind is not { Value: not null } id || !ByKind.TryGetValue(id, out var note) ? WholeReedLessons.General
        : scrape == ScrapeStyle.ShortScrape && ShortScrape.TryGetValue(note, out var own) ? own
        : !ReedMeasures.IsOboe(instrument) && OtherInstrument.TryGetValue(note, out var other) ? other
        : note;

    /// <summary>Whether a kind of fault has a note of its own.</summary>
    /// <param name="kind">The kind.</param>
    public static bool HasOwn(FindingKindId kind) => ByKind.ContainsKey(kind);

    private static Dictionary<FindingKindId, TeachingNote> All()
    {
        (TeachingNote Note, string[] Kinds)[] notes =
        [
            (TipLessons.Sides, ["tip-thick", "tip-corners-thick"]),
            (TipLessons.Centre, ["tip-thin", "tip-even-across", "tip-centre-thin"]),
            (TipLessons.Line, ["tip-short", "tip-long", "tip-not-separate", "heart-length"]),
            (TipLessons.Slope, ["step-abrupt", "bumps"]),
            (TipLessons.End, ["tip-corner-broken", "tip-line-slanted", "tip-edge-ragged", "tip-cracked", "tip-wavy"]),
            (BodyLessons.HeartSides, ["heart-thick", "heart-sides-thick", "centre-closes-first", "bark-island"]),
            (BodyLessons.HeartKept, ["heart-thin"]),
            (BodyLessons.Back, ["back-thick"]),
            (BodyLessons.BackKept, ["back-thin", "spine-scraped", "rails-cut", "closes-in-play"]),
            (BodyLessons.Evenness, ["left-right-uneven", "blades-uneven", "heart-lopsided", "windows-uneven", "opening-lopsided"]),
            (
                WholeReedLessons.Tying,
                ["slipped-too-far", "slipped-against-winding", "no-slip", "side-leak", "crooked-on-staple", "thread-too-high", "thread-leak"]),
            (WholeReedLessons.Opening, ["opening-wide", "opening-narrow"]),
            (WholeReedLessons.Keeping, ["worn", "dirty-inside", "cork-loose", "body-cracked"]),
        ];
        return notes.SelectMany(entry => entry.Kinds.Select(kind => (new FindingKindId(kind), entry.Note)))
            .ToDictionary(pair => pair.Item1, pair => pair.Note);
    }
}
