using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>
/// Words at the bench that name what a student complained of: “high A sags”. Whoever reads them in a letter isn’t told beside them that nothing
/// was tried, and what was remarked later than a test may have changed what the test said.
/// </summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class ComplaintNamed
{
    private const int FewestLetters = 4;

    // What many complaints are made of, and names none. From memory.
    private static readonly HashSet<string> Common = new(StringComparer.Ordinal)
    {
        "with", "hard", "from", "that", "this", "note", "very", "much", "little", "good", "better", "worse", "lovely", "fine", "great", "nice", "every", "each", "some", "other", "another", "different", "after", "speak", "won’t", "won't", "when", "goes", "gets", "start", "long",
    };

    /// <summary>The words that name it, in the order in which they were said; a test of just that, with words and no step, does.</summary>
    /// <param name="complaint">The complaint.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="after">Only what was said after this place in the log.</param>
    internal static IReadOnlyList<string> In(Complaint complaint, BenchLog log, int after = 0) =>
    [
        .. log.Facts.Where(fact => fact.Now is not null && fact.Sequence > after).OrderBy(fact => fact.Sequence)
            .SelectMany(fact => Words(fact.Now!).Where(words => fact.Now is Test test && test.TestKind == complaint.Test ? !LetterLog.IsBare(test) : Names(words, complaint))).Distinct(),
    ];

    /// <summary>The same among what is remarked only, which a letter doesn’t tell.</summary>
    /// <param name="complaint">The complaint.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="after">Only what was said after this place in the log.</param>
    internal static IReadOnlyList<string> Remarked(Complaint complaint, BenchLog log, int after) =>
        [.. log.Live<Note>().Where(note => note.Sequence > after).OrderBy(note => note.Sequence).Select(note => note.Now.Words).Where(words => Names(words, complaint)).Distinct()];

    /// <summary>Whether a remark of when the reed came says of it just what the student wrote, and nothing else: “low notes growl” beside “my low D growls”.</summary>
    /// <param name="complaint">The complaint.</param>
    /// <param name="bothers">What the student wrote.</param>
    /// <param name="log">The reed’s log.</param>
    internal static bool IsMet(Complaint complaint, string bothers, BenchLog log)
    {
        if (complaint.Told.Length == 0 || Clauses().Split(bothers).FirstOrDefault(clause => clause.Contains(complaint.Told, StringComparison.OrdinalIgnoreCase)) is not { } wrote)
        {
            return false;
        }

        HashSet<string> name = [.. Stems(complaint.Name), .. Stems(complaint.Told)], all = [.. Stems(wrote), .. name];
        return log.Live<Note>().Where(note => note.Pass == 0 && Names(note.Now.Words, complaint)).Select(note => (note.Now.Words, Stems: Stems(note.Now.Words).ToList()))
            .Any(note => note.Stems.TrueForAll(all.Contains) && note.Stems.Exists(stem => !name.Contains(stem)) && Denies().IsMatch(note.Words) == Denies().IsMatch(wrote));
    }

    /// <summary>Whether words that the letter tells name it, or only what it is about: “the pitch is up” beside “a little flat”.</summary>
    /// <param name="complaint">The complaint.</param>
    /// <param name="log">The reed’s log.</param>
    internal static bool IsTouched(Complaint complaint, BenchLog log) => log.Facts.Where(fact => fact.Now is not null and not (Test or Note))
        .SelectMany(fact => Words(fact.Now!)).Any(words => Names(words, complaint) || Stems(complaint.Name).Intersect(Stems(words)).Any());

    private static IEnumerable<string> Words(BenchEntry entry) => (entry is Note note ? [note.Words] : TypedWords.Of(entry)).OfType<string>();

    private static bool Names(string words, Complaint complaint) =>
        ComplaintsKnown.All.Any(one => (one.Means.Name == complaint.Name || (complaint.Test is { } test && one.Means.Test == test)) && one.Words.IsMatch(words))
        || (complaint.Test == TestKind.SoftestStart && Softly().IsMatch(words))
        || Stems(complaint.Told).Intersect(Stems(words)).Any();

    private static IEnumerable<string> Stems(string words) => Word().Matches(words.ToLowerInvariant()).Select(match => match.Value.TrimEnd('s')).Where(word => word.Length >= FewestLetters && !Common.Contains(word));

    [GeneratedRegex(@"(?i)[.,;:!?]\s+|\s+(?:and|but)\s+")]
    private static partial Regex Clauses();

    [GeneratedRegex(@"(?i)\b(?:no|not|never|none|hardly|less|cannot)\b|n['’]t\b")]
    private static partial Regex Denies();

    [GeneratedRegex(@"(?i)\bpp+\b|\bsoftest\b")]
    private static partial Regex Softly();

    [GeneratedRegex(@"\p{L}+(?:['’](?!s\b)\p{L}+)?")]
    private static partial Regex Word();
}
