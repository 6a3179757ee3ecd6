using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>A teaching note of the studio's own.</summary>
/// <param name="Value">A version 7 identifier.</param>
public readonly record struct OwnNoteId(Guid Value);

/// <summary>What was typed for a note.</summary>
/// <param name="Title">What it is called in the studio; no student reads it.</param>
/// <param name="Text">The passage, with fields such as <c>{reeds}</c>.</param>
/// <param name="Link">Where one can read or see more; nothing, or an address.</param>
/// <param name="Kinds">The kinds of finding that it is filed under.</param>
public sealed record OwnNoteWords(string? Title, string? Text, string? Link, IReadOnlyList<FindingKindId> Kinds)
{
    /// <summary>The key of its picture; null for none.</summary>
    public string? Picture { get; init; }

    /// <summary>What the picture shows, for those who can't see it.</summary>
    public string? PictureWords { get; init; }
}

/// <summary>A passage that the studio wrote once and puts into many letters. It belongs to the studio, whoever wrote it.</summary>
public sealed class OwnNote
{
    /// <summary>The longest title, in characters.</summary>
    public const int LongestTitle = 120;

    /// <summary>The longest passage, in characters.</summary>
    public const int LongestText = 2500;

    /// <summary>The most kinds of finding that a note is filed under.</summary>
    public const int MostKinds = 12;

    private const char Between = ' ';

    // For the database, which sets every property.
    private OwnNote()
    {
    }

    /// <summary>A note with nothing in it.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="by">Who begins it.</param>
    /// <param name="now">When.</param>
    public OwnNote(OwnNoteId id, AccountId by, DateTimeOffset now) => (Id, MadeBy, ChangedAt) = (id, by, now);

    /// <summary>Its id.</summary>
    public OwnNoteId Id { get; private set; }

    /// <summary>What it is called in the studio.</summary>
    public string Title { get; private set; } = "";

    /// <summary>The passage, with its fields.</summary>
    public string Text { get; private set; } = "";

    /// <summary>Where one can read or see more; null for nowhere.</summary>
    public string? Link { get; private set; }

    /// <summary>The lasting names of the findings that it is filed under, with a space between them.</summary>
    public string FiledUnder { get; private set; } = "";

    /// <summary>The key of its picture; null for none.</summary>
    public string? Picture { get; private set; }

    /// <summary>What the picture shows; never null where there is one.</summary>
    public string? PictureWords { get; private set; }

    /// <summary>Who wrote it first; an id that leads nowhere once that account is erased.</summary>
    public AccountId MadeBy { get; private set; }

    /// <summary>When it was last changed.</summary>
    public DateTimeOffset ChangedAt { get; private set; }

    /// <summary>Since when it isn't offered any more; null while it is.</summary>
    public DateTimeOffset? RetiredAt { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>The findings that it is filed under.</summary>
    public IReadOnlyList<FindingKindId> Kinds =>
        [.. FiledUnder.Split(Between, StringSplitOptions.RemoveEmptyEntries).Select(kind => new FindingKindId(kind))];

    /// <summary>Writes it anew; the same words again change nothing.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="now">When.</param>
    /// <param name="own">What the studio added to the kinds of finding; it may be filed under those too.</param>
    /// <returns>What can't be taken, beside its field; empty when it was written.</returns>
    public IReadOnlyList<Problem> Write(OwnNoteWords words, DateTimeOffset now, OwnKinds? own = null)
    {
        var problems = new List<Problem>();
        var read = Read(words, own, problems);
        if (problems.Count == 0 && read != (Title, Text, Link, FiledUnder, Picture, PictureWords))
        {
            (Title, Text, Link, FiledUnder, Picture, PictureWords) = read;
            ChangedAt = now;
        }

        return problems;
    }

    /// <summary>What can't be taken of something typed, beside its field.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="own">What the studio added to the kinds of finding.</param>
    public static IReadOnlyList<Problem> Check(OwnNoteWords words, OwnKinds? own = null)
    {
        var problems = new List<Problem>();
        _ = Read(words, own, problems);
        return problems;
    }

    /// <summary>Offers it no more, or again. Letters that hold it keep it.</summary>
    /// <param name="retired">Whether it is retired.</param>
    /// <param name="now">When.</param>
    public void Retire(bool retired, DateTimeOffset now) => RetiredAt = retired ? RetiredAt ?? now : null;

    private static (string Title, string Text, string? Link, string Kinds, string? Picture, string? PictureWords) Read(OwnNoteWords words, OwnKinds? own, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(words);
        var title = Required(words.Title, nameof(Title), LongestTitle, "Give it a title, so that you find it again.", problems);
        var text = Required(words.Text, nameof(Text), LongestText, "Write the passage.", problems, severalLines: true);
        if (text is not null && NoteField.UnknownIn(text) is { Count: > 0 } unknown)
        {
            problems.Add(new(nameof(Text), $"There is no field {string.Join(" or ", unknown)}. The fields are listed under the passage."));
        }

        if (words.Kinds.Count > MostKinds || words.Kinds.Any(kind => (own ?? OwnKinds.None).Find(kind) is null))
        {
            problems.Add(new(nameof(Kinds), $"Choose at most {MostKinds} findings from the list."));
        }

        var link = NoteLink.Read(words.Link, nameof(Link), problems);
        var shows = PlainText.Read(words.PictureWords, nameof(PictureWords), PictureMark.LongestWords, problems);
        if (words.Picture is not null && shows is null)
        {
            problems.Add(new(nameof(PictureWords), "Say what the picture shows, for those who can’t see it."));
        }

        return (title ?? "", text ?? "", link, string.Join(Between, words.Kinds.Select(kind => kind.Value).Distinct()), words.Picture, shows);
    }

    private static string? Required(string? typed, string field, int longest, string missing, List<Problem> problems, bool severalLines = false)
    {
        var before = problems.Count;
        var text = PlainText.Read(typed, field, longest, problems, severalLines);
        if (text is null && problems.Count == before)
        {
            problems.Add(new(field, missing));
        }

        return text;
    }
}
