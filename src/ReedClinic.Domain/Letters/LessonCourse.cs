using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>What became, here at the bench, of the fault that the common lesson is about.</summary>
internal sealed class LessonCourse
{
    private const int PartsInOneSentence = 2;

    private readonly IReadOnlyList<(int Reed, FindingCourse Course)> _reeds;
    private readonly IReadOnlyList<EntryId> _roots;

    private readonly bool _worked;

    private LessonCourse(IReadOnlyList<(int Reed, FindingCourse Course)> reeds, IReadOnlyList<EntryId> roots, bool worked) => (_reeds, _roots, _worked) = (reeds, roots, worked);

    /// <summary>Whether it is told as what was so when the reeds came: on one of them at least it is so no longer, or nobody knows that it is.</summary>
    internal bool IsPast => _worked || IsMended;

    private bool IsMended => _reeds.Any(reed => reed.Course != FindingCourse.Still);

    /// <summary>Reads it; of a reed that has the fault in several places, the one that is furthest from being put right counts.</summary>
    /// <param name="found">The fault, with the reed and the log in which it was found.</param>
    internal static LessonCourse Of(IReadOnlyList<(int Reed, BenchLog Log, FindingNow Finding)> found) => new(
        [
            // What was only suspected wasn’t put right.
            .. found.Where(one => one.Finding.Finding.Certainty != Certainty.Suspected).GroupBy(one => one.Reed, one => one.Finding.CourseIn(one.Log)).Select(reed => (reed.Key, reed.Min())).OrderBy(reed => reed.Key),
        ],
        [
            .. found.SelectMany(one => new EntryId?[] { one.Finding.Fact.Root, one.Finding.Ended?.Root }.OfType<EntryId>()
                .Concat(one.Finding.CourseIn(one.Log) == FindingCourse.TestedBetter ? one.Finding.DoneForIt.Select(work => work.Root) : [])),
        ],
        found.Any(one => one.Finding.IsPast(one.Log)));

    /// <summary>That it was seen to here, and that the lesson is for the next reed; nothing where it is still so everywhere.</summary>
    /// <param name="phrasing">Chooses the words.</param>
    internal IEnumerable<LetterSentence> Sentences(Phrasing phrasing)
    {
        if (!IsMended)
        {
            return [];
        }

        var courses = _reeds.GroupBy(reed => reed.Course, reed => reed.Reed).OrderByDescending(course => course.Key).ToList();
        if (courses.Count == 1)
        {
            var alone = _reeds.Count == 1;
            (string, string)[] slots = [("these", alone ? "this reed" : "these reeds"), ("have", alone ? "has" : "have"), ("reeds", alone ? "the reed" : "the reeds")];
            return [new(phrasing.Say("lesson-mended", 0, LessonWordings.Mended[courses[0].Key], slots), _roots)];
        }

        return
        [
            .. courses.Select(course => Part(course, phrasing)).Chunk(PartsInOneSentence)
                .Select(some => new LetterSentence(Prose.Sentence(string.Join("; ", some)), _roots)),
            LetterSentence.Plain(phrasing.Say("lesson-for-next", 0, LessonWordings.ForTheNext)),
        ];
    }

    private static string Part(IGrouping<FindingCourse, int> course, Phrasing phrasing)
    {
        var one = course.Count() == 1;
        (string, string)[] slots = [("where", $"in {(one ? "reed" : "reeds")} {Prose.List([.. course.Select(Prose.Number)])}"), ("reeds", one ? "it" : "they"), ("have", one ? "has" : "have")];
        return phrasing.Clause("lesson-part", (int)course.Key, LessonWordings.MendedIn[course.Key], false, slots);
    }
}
