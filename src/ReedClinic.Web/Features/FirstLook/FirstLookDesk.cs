using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Features.Bench.Forms;

namespace ReedClinic.Web.Features.FirstLook;

/// <summary>Saves one row of the first look: each cell by itself, so that one that can't be read keeps no other back.</summary>
public sealed class FirstLookDesk(BenchBook bench, IStringLocalizer<FirstLookText> t)
{
    /// <summary>Saves what is new in a row.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="form">The row.</param>
    /// <param name="tuning">What the student tunes to.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <returns>What couldn't be saved, by the row's own fields.</returns>
    public async Task<IReadOnlyList<Problem>> SaveAsync(Actor actor, FirstLookForm form, Tuning tuning, CancellationToken ct)
    {
        var post = new EntryPost(bench);
        var problems = new List<Problem>();
        foreach (var cell in form.Changed)
        {
            var outcome = await post.SaveAsync(actor, form.Reed, cell, tuning, ct).ConfigureAwait(false);
            problems.AddRange(ProblemsOf(cell, outcome));
        }

        return problems;
    }

    private IEnumerable<Problem> ProblemsOf(TestForm cell, Outcome<BenchFact> outcome)
    {
        var test = cell.Scale.TestKind;
        return outcome switch
        {
            Outcome<BenchFact>.Done => [],
            Outcome<BenchFact>.Refused(var problems) => problems.Select(problem => problem with { Field = FirstLookForm.Name(test, problem.Field) }),
            Outcome<BenchFact>.Conflict(var theirs) => [new Problem(FirstLookForm.Name(test, nameof(Test.Step)), t["Clash", Say(theirs)])],
            _ => [new Problem("", t["Gone"])],
        };
    }

    private static string Say(BenchFact fact) => fact.Now is Test test ? string.Join(", ", new[] { test.StepWord, test.Pitch?.Text }.OfType<string>()) : "–";
}
