using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>What a letter can teach of one cause: the test that shows it, what can be undone to try first, and when to ask.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Test">The test that shows it.</param>
/// <param name="TryFirst">The first of its steps that can be undone; null where all of them take cane.</param>
/// <param name="AskWhen">When to ask a teacher.</param>
public sealed record LessonStart(Cause Cause, TestCard Test, AdjustmentEntry? TryFirst, string AskWhen)
{
    /// <summary>What a letter can teach of a cause.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="id">The cause.</param>
    /// <returns>The lesson; null where the cause, or every test that shows it, is no longer used.</returns>
    public static LessonStart? Of(Catalogue catalogue, CauseId id)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        if (catalogue.Find(id) is not { Retired: false } cause)
        {
            return null;
        }

        var test = (from link in catalogue.LinksOf(id)
                    let sign = catalogue.Find(link.Sign)
                    where sign is { Retired: false }
                    let card = catalogue.Find(sign.Test)
                    where card is { Retired: false }
                    orderby link.Strength.Value descending, sign.Unasked.Value, sign.Id.Value
                    select card).FirstOrDefault();
        var first = cause.Steps.Where(step => !cause.NeverFirst.Contains(step)).Select(catalogue.Find)
            .FirstOrDefault(entry => entry is { Retired: false, Undo: not Reversible.No, ByChoice.Value: false });
        return test is null ? null : new LessonStart(
            cause, test, first,
            first is null
                ? "Everything that helps here takes cane: ask a teacher before the knife."
                : "If it is no better after that, ask a teacher before the knife.");
    }
}
