using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Features.Bench.Forms;

namespace ReedClinic.Web.Features.FirstLook;

/// <summary>Saves what is new in the first look: each cell by itself, so that one that can't be read keeps no other back.</summary>
public sealed class FirstLookDesk(BenchBook bench, IStringLocalizer<FirstLookText> t)
{
    /// <summary>Saves what is new in one row.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="row">The reed as it stands.</param>
    /// <param name="form">The row as it was typed.</param>
    /// <param name="tuning">What the student tunes to.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <returns>What couldn't be saved, each beside the table's own field.</returns>
    public async Task<IReadOnlyList<Problem>> SaveAsync(Actor actor, ReedAtBench row, FirstLookForm form, Tuning tuning, CancellationToken ct)
    {
        var post = new EntryPost(bench);
        var problems = new List<Problem>();
        var closed = FirstLookStates.Of(row) != FirstLookState.Open;
        foreach (var cell in form.Changed)
        {
            if (!closed)
            {
                var outcome = await post.SaveAsync(actor, row.Reed, cell, tuning, ct).ConfigureAwait(false);
                problems.AddRange(ProblemsOf(form.Number, cell, outcome));
            }
            else if (!form.IsSaved(cell))
            {
                problems.Add(Beside(form.Number, cell, nameof(Test.Step), t["Closed"]));
            }
        }

        return problems;
    }

    private IEnumerable<Problem> ProblemsOf(int number, TestForm cell, Outcome<BenchFact> outcome) => outcome switch
    {
        Outcome<BenchFact>.Done => [],
        Outcome<BenchFact>.Refused(var problems) => problems.Select(problem => Beside(number, cell, problem.Field, problem.Message)),
        Outcome<BenchFact>.Conflict(var theirs) => [Beside(number, cell, nameof(Test.Step), t["Clash", Say(theirs)])],
        _ => [Beside(number, cell, nameof(Test.Step), t["Gone"])],
    };

    // A cell has two fields: whatever isn't about its pitch is told beside its word.
    private static Problem Beside(int number, TestForm cell, string field, string message) =>
        new(FirstLookForm.Name(number, cell.Scale.TestKind, field == nameof(Test.Pitch) ? field : nameof(Test.Step)), message);

    private static string Say(BenchFact fact) => fact.Now is Test test ? string.Join(", ", new[] { test.StepWord, test.Pitch?.Text }.OfType<string>()) : "–";
}
