using System.Globalization;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Documents.Letters;

/// <summary>
/// A part of a letter as HTML. For a reed, its drawing belongs between head and body; whoever shows the letter draws it.
/// </summary>
/// <param name="Reed">The reed that the part is about; null for a part about all of them.</param>
/// <param name="Kind">A short name of what it is, for its class.</param>
/// <param name="Head">Its heading, as HTML; may be empty.</param>
/// <param name="Body">Its first block, as HTML: it is kept together with the heading and the drawing.</param>
/// <param name="Rest">Its other blocks, as HTML; only a reed, the lesson and care have them.</param>
public sealed record LetterSection(ReedId? Reed, string Kind, string Head, string Body, string Rest = "")
{
    /// <summary>The end of its address within the letter; null for a part that can’t be gone to.</summary>
    public string? Id { get; init; }

    /// <summary>What is said of a reed before the drawing of its crow's way, as HTML: it explains the words of the drawing.</summary>
    public string BeforeCrow { get; init; } = "";

    /// <summary>How a reed played and plays, as a table in HTML; it belongs with the drawing of its crow's way.</summary>
    public string Table { get; init; } = "";

    /// <summary>Of a reed: the end of the address of what was asked about it; null where nothing was.</summary>
    public string? Asked { get; init; }

    /// <summary>The heading of that, as text; null where nothing was asked.</summary>
    public string? AskedName { get; init; }

    /// <summary>What it is called in the list of parts, as text.</summary>
    public string? Name { get; init; }
}

/// <summary>Sets a composed letter as HTML: as parts for a page.</summary>
public static class LetterPage
{
    /// <summary>So many parts need no list of them.</summary>
    public const int FewParts = 3;

    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>The letter's parts in order. Blocks about the same reed stand together in one.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="pictures">The address of a picture by its key, null for one that can't be had; without it, where the letter's readers have them.</param>
    public static IReadOnlyList<LetterSection> Sections(LetterDraft letter, Func<string, string?>? pictures = null)
    {
        ArgumentNullException.ThrowIfNull(letter);
        pictures ??= key => PictureAddress(letter.Code, key);
        var reeds = letter.Reeds.ToDictionary(reed => reed.Id);
        var sections = new List<LetterSection>();
        foreach (var block in letter.Blocks.Where(block => !block.IsEmpty))
        {
            if (block.Reed is { } reed)
            {
                var isFirst = sections.Count == 0 || sections[^1].Reed != reed;
                if (isFirst)
                {
                    sections.Add(Named(new(reed, "reed", ReedHead(reeds.GetValueOrDefault(reed)), ""), ReedName(reeds.GetValueOrDefault(reed)), sections));
                }

                sections[^1] = block.Kind == BlockKind.ReedAnswers
                    ? Answered(sections[^1], block, isFirst, pictures)
                    : With(sections[^1], block, isFirst, pictures);
            }
            else if (block.Kind == BlockKind.Habit && sections.Count > 0 && sections[^1].Kind == LetterBlockHtml.Class(BlockKind.Lesson))
            {
                // What may be behind the lesson is part of it.
                sections[^1] = sections[^1] with { Rest = sections[^1].Rest + LetterBlockHtml.Body(block, pictures) };
            }
            else
            {
                var (folded, shown) = Parted(block);
                sections.Add(Named(new(null, LetterBlockHtml.Class(block.Kind), LetterBlockHtml.Head(block), LetterBlockHtml.Body(folded, pictures), shown is null ? "" : LetterBlockHtml.Body(shown, pictures)), block.Heading, sections));
            }
        }

        return sections;
    }

    // Care is folded where the place is narrow: what is said there of a knife isn’t, and stands below it.
    private static (LetterBlock Folded, LetterBlock? Shown) Parted(LetterBlock block) =>
        block is { Kind: BlockKind.Care, Paragraphs.Count: > 1 } && block.Paragraphs.Where(paragraph => paragraph.Text.Contains("knife", StringComparison.OrdinalIgnoreCase)).ToList() is { Count: > 0 } knife && knife.Count < block.Paragraphs.Count
            ? (block with { Paragraphs = [.. block.Paragraphs.Except(knife)] }, block with { Paragraphs = knife })
            : (block, null);

    // The answer has an address of its own: it stands far below the heading of its reed.
    private static LetterSection Answered(LetterSection section, LetterBlock block, bool isFirst, Func<string, string?> pictures)
    {
        var asked = section.Asked is null && section.Id is { } id ? id + "-asked" : null;
        var name = AskedName(section.Name);
        var html = $"<div class=\"letter-asked\"{(asked is null ? "" : $" id=\"{Escaped.Text(asked)}\"")}>\n<h3>{Escaped.Text(name)}</h3>\n{LetterBlockHtml.Body(block, pictures)}</div>\n";
        var answered = section with { Asked = section.Asked ?? asked, AskedName = name };
        return isFirst ? answered with { Body = html } : answered with { Rest = section.Rest + html };
    }

    private static LetterSection With(LetterSection section, LetterBlock block, bool isFirst, Func<string, string?> pictures) =>
        block.Kind == BlockKind.ReedNow
            ? section with
            {
                BeforeCrow = section.BeforeCrow + LetterBlockHtml.Body(block with { Rows = [] }, pictures),
                Table = section.Table + LetterBlockHtml.Body(block with { Paragraphs = [] }, pictures),
            }
            : isFirst ? section with { Body = LetterBlockHtml.Body(block, pictures) }
            : section with { Rest = section.Rest + LetterBlockHtml.Body(block, pictures) };

    /// <summary>One block's text, as HTML; for whoever shows the blocks one by one.</summary>
    /// <param name="block">The block.</param>
    /// <param name="code">The code of the letter's batch.</param>
    public static string Body(LetterBlock block, string code)
    {
        ArgumentNullException.ThrowIfNull(block);
        return LetterBlockHtml.Body(block, key => PictureAddress(code, key));
    }

    /// <summary>Where a letter's readers have one of its pictures.</summary>
    /// <param name="code">The code of its batch.</param>
    /// <param name="key">The picture's key.</param>
    public static string PictureAddress(string code, string key) => $"/letters/{code}/pictures/{key}";

    /// <summary>The day of a letter as it stands at its head, such as “9 March 2026”.</summary>
    /// <param name="day">The day.</param>
    public static string Day(DateTimeOffset day) => day.ToString("d MMMM yyyy", English);

    /// <summary>What stands below the day of a corrected letter.</summary>
    /// <param name="replaced">The day of the letter that it takes the place of.</param>
    /// <param name="day">When the corrected one was sent: on the same day both are told apart by the hour.</param>
    public static string Corrected(DateTimeOffset replaced, DateTimeOffset day) => IsSameDay(replaced, day)
        ? $"Corrected at {Hour(day)}: it takes the place of the letter that was sent at {Hour(replaced.ToOffset(day.Offset))} on the same day."
        : $"Corrected: it takes the place of the letter of {Day(replaced)}.";

    /// <summary>What stands below the day of a letter that was corrected.</summary>
    /// <param name="later">When the corrected one was sent.</param>
    /// <param name="day">When this one was.</param>
    internal static string ReplacedBy(DateTimeOffset later, DateTimeOffset day) => IsSameDay(later, day)
        ? $"Sent at {Hour(day)}, and replaced at {Hour(later.ToOffset(day.Offset))} on the same day by a corrected letter."
        : $"Replaced on {Day(later)} by a corrected letter.";

    private static bool IsSameDay(DateTimeOffset other, DateTimeOffset day) => other.ToOffset(day.Offset).Date == day.Date;

    private static string Hour(DateTimeOffset at) => at.ToString("HH:mm", English);

    // Two parts never have the same address: of two with one name the first is gone to.
    private static LetterSection Named(LetterSection section, string? name, List<LetterSection> before)
    {
        var id = name is null ? null : "part-" + (section.Reed is null ? section.Kind : name.ToLowerInvariant().Replace(' ', '-'));
        return id is null || before.Exists(other => other.Id == id) ? section : section with { Id = id, Name = name };
    }

    /// <summary>The heading over what was asked about a reed.</summary>
    /// <param name="reed">What the reed is called, such as “Reed 3”; null where that isn’t known.</param>
    internal static string AskedName(string? reed) => reed is null ? "What you asked about it" : $"What you asked about {reed.ToLowerInvariant()}";

    /// <summary>What stands in the list of a letter’s parts, in order; empty where a few parts need none.</summary>
    /// <param name="letter">The letter.</param>
    internal static IReadOnlyList<string> Contents(LetterDraft letter)
    {
        var named = Sections(letter).Where(section => section.Id is not null).ToList();
        return named.Count <= FewParts ? [] : [.. named.SelectMany(section => new[] { section.Name, section.Asked is null ? null : section.AskedName }).OfType<string>()];
    }

    internal static string? ReedName(LetterReed? reed) => reed is null ? null : string.Create(CultureInfo.InvariantCulture, $"Reed {reed.Number}");

    private static string ReedHead(LetterReed? reed) => reed is null
        ? ""
        : $"<h2>Reed {reed.Number.ToString(CultureInfo.InvariantCulture)} <span class=\"letter-recognise\">{Escaped.Text(reed.HowToRecognise)}</span></h2>\n";
}
