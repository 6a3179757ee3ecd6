using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>Why a note is offered: a finding that it is filed under, and the reeds that had it.</summary>
/// <param name="Kind">The finding.</param>
/// <param name="Reeds">The numbers of the reeds.</param>
public sealed record NoteReason(FindingKindId Kind, IReadOnlyList<int> Reeds)
{
    /// <summary>What the finding is called here now.</summary>
    public string Name { get; init; } = FindingCatalogue.NameOf(Kind);

    /// <summary>The reeds in words, such as “reeds one and three”.</summary>
    public string Where => (Reeds.Count == 1 ? "reed " : "reeds ") + Prose.List([.. Reeds.Select(Prose.Number)]);
}

/// <summary>A note as it is offered for one letter, its fields filled from that batch and no other.</summary>
/// <param name="Id">The note.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Reasons">Why it is offered; empty for one of the rest.</param>
/// <param name="IsCommon">Whether what it is filed under was common to the batch.</param>
/// <param name="Text">What is put in, in a part about all the reeds.</param>
/// <param name="TextByReed">What is put in, in a part about one reed, by its number.</param>
public sealed record NoteOffer(
    OwnNoteId Id, string Title, IReadOnlyList<NoteReason> Reasons, bool IsCommon, string Text, IReadOnlyDictionary<int, string> TextByReed)
{
    /// <summary>Its picture, which is in the texts too; null for none.</summary>
    public PictureMark? Picture { get; init; }

    /// <summary>Offers notes for a letter: those first that are filed under what was common. What nobody looked for offers none.</summary>
    /// <param name="notes">The studio's notes.</param>
    /// <param name="material">What the letter is composed from.</param>
    public static IReadOnlyList<NoteOffer> Of(IEnumerable<OwnNote> notes, LetterMaterial material)
    {
        ArgumentNullException.ThrowIfNull(notes);
        ArgumentNullException.ThrowIfNull(material);
        List<Reed> here = [.. material.Batch.Reeds.Where(reed => reed.Presence != Presence.Missing)];
        var sheet = new FindingSheet([.. here.Select(reed => reed.Id)], here.SelectMany(reed => SheetRow.Of(reed.Id, material.LogOf(reed.Id))));
        return
        [
            .. notes.Where(note => note.RetiredAt is null).Select(note => Of(note, here, sheet, material))
                .OrderByDescending(offer => offer.IsCommon)
                .ThenByDescending(offer => offer.Reasons.Sum(reason => reason.Reeds.Count))
                .ThenBy(offer => offer.Title, StringComparer.OrdinalIgnoreCase),
        ];
    }

    private static NoteOffer Of(OwnNote note, List<Reed> here, FindingSheet sheet, LetterMaterial material)
    {
        List<NoteReason> reasons =
        [
            .. note.Kinds.Select(kind => new NoteReason(
                kind, [.. here.Where(reed => sheet.Cell(kind, reed.Id).Answer == SheetAnswer.Yes).Select(reed => reed.Number)])
            {
                Name = material.Own.NameOf(kind),
            })
                .Where(reason => reason.Reeds.Count > 0),
        ];
        var common = reasons.Exists(reason => reason.Reeds.Count > 1 || here.Count == 1
            || reason.Kind == material.Thread.LessonKind || reason.Kind == material.Thread.StrengthKind);
        List<Reed> having = [.. here.Where(reed => reasons.Exists(reason => reason.Reeds.Contains(reed.Number)))];
        return new(
            note.Id, note.Title, reasons, common, Passage(note, having, null, material),
            here.ToDictionary(reed => reed.Number, reed => Passage(note, having, reed, material)))
        {
            Picture = PictureOf(note),
        };
    }

    // In a part about one reed, the place and the blade are that reed's own.
    private static string Passage(OwnNote note, List<Reed> having, Reed? about, LetterMaterial material)
    {
        var kinds = note.Kinds.ToHashSet();
        List<Place> places =
        [
            .. having.Where(reed => about is null || reed == about)
                .SelectMany(reed => material.LogOf(reed.Id).Findings)
                .Where(finding => kinds.Contains(finding.Finding.FindingKind) && finding.Finding.Arose != Arose.CausedByTheWork)
                .Select(finding => finding.Finding.Place),
        ];
        var one = about ?? (having.Count == 1 ? having[0] : null);
        var filling = new NoteFilling(
            material.StudentName.Split(' ')[0] is { Length: > 0 } name ? name : null,
            one is null ? null : "reed " + Prose.Number(one.Number),
            Reeds(having),
            places.Count == 0 ? null : Prose.List([.. places.Select(place => LetterPlaces.Name(place.Zone)).Distinct()]),
            Blade(places));
        var text = NoteField.Fill(note.Text, filling);
        var picture = PictureOf(note) is { } mark ? "\n\n" + mark.Written : "";
        return text + picture + (note.Link is { } link ? $"\n\n{link}" : "");
    }

    private static PictureMark? PictureOf(OwnNote note) => note is { Picture: { } key, PictureWords: { } shows } ? new(key, shows) : null;

    private static string? Reeds(List<Reed> having) => having.Count switch
    {
        0 => null,
        1 => "reed " + Prose.Number(having[0].Number),
        _ => "reeds " + Prose.List([.. having.Select(reed => Prose.Number(reed.Number))]),
    };

    // “Both” may mean no blade in particular, so it alone fills nothing.
    private static string? Blade(List<Place> places) =>
        (places.Exists(place => place.Blades == Blades.Upper), places.Exists(place => place.Blades == Blades.Lower)) switch
        {
            (true, true) => "both blades",
            (true, false) when places.TrueForAll(place => place.Blades == Blades.Upper) => "the upper blade",
            (false, true) when places.TrueForAll(place => place.Blades == Blades.Lower) => "the lower blade",
            _ => null,
        };
}
