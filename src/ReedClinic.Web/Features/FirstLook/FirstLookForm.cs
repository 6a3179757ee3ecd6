using System.Globalization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Features.FirstLook;

/// <summary>The quick tests of one reed before any work, as they are typed in one row of the table.</summary>
public sealed class FirstLookForm
{
    private const string Seen = "Seen";
    private const string Operation = "Operation";

    private static readonly string[] Fields = [nameof(Test.Step), nameof(Test.Pitch)];

    private readonly BenchLog log;
    private readonly Dictionary<TestKind, TestForm> cells;

    private FirstLookForm(ReedAtBench row, Func<TestKind, TestForm> cell)
    {
        Reed = row.Reed.Id;
        Number = row.Reed.Number;
        log = row.Log;
        cells = Tests.ToDictionary(test => test, cell);
    }

    /// <summary>The few quick tests, the same for every reed.</summary>
    public static IReadOnlyList<TestKind> Tests { get; } =
        [TestKind.Opening, TestKind.Crow, TestKind.Peep, TestKind.SoftestStart, TestKind.LowResponse, TestKind.Effort];

    /// <summary>The reed.</summary>
    public ReedId Reed { get; }

    /// <summary>The number on its tag; the row's fields are told from those of other rows by it.</summary>
    public int Number { get; }

    /// <summary>One test of the row.</summary>
    /// <param name="test">The test.</param>
    public TestForm this[TestKind test] => cells[test];

    /// <summary>The cells in which something was typed that didn't stand when the page was opened.</summary>
    public IEnumerable<TestForm> Changed => Tests.Select(test => cells[test]).Where(IsNew);

    /// <summary>True when a cell was saved already, by an earlier try with the same operation.</summary>
    /// <param name="cell">The cell.</param>
    public bool IsSaved(TestForm cell) => log.History.Any(line => line.Entry.OperationId == cell.Operation);

    /// <summary>The row as it stands on record.</summary>
    /// <param name="row">The reed and its log.</param>
    /// <param name="newOperation">Makes an operation for each cell.</param>
    public static FirstLookForm Of(ReedAtBench row, Func<OperationId> newOperation) => new(row, test => Standing(row.Log, test, newOperation()));

    /// <summary>The row as it was posted; what the post doesn't bring stays as it stands.</summary>
    /// <param name="row">The reed and its log.</param>
    /// <param name="posted">The fields of the whole table.</param>
    /// <param name="newOperation">For a cell that brings none.</param>
    public static FirstLookForm Of(ReedAtBench row, IFormCollection posted, Func<OperationId> newOperation)
    {
        var typed = TypedText.Of(posted);
        var number = row.Reed.Number;
        return new FirstLookForm(row, test =>
        {
            if (!posted.ContainsKey(OperationName(number, test)))
            {
                return Standing(row.Log, test, newOperation());
            }

            var operation = typed.Id(OperationName(number, test)) is { } sent ? new OperationId(sent) : newOperation();
            var seen = typed.Id(SeenName(number, test)) is { } tail ? new EntryId(tail) : (EntryId?)null;
            var cell = Empty(test, operation, seen, row.Log);
            cell.Typed[nameof(Test.Step)] = typed[Name(number, test, nameof(Test.Step))];
            cell.Typed[nameof(Test.Pitch)] = typed[Name(number, test, nameof(Test.Pitch))];
            return cell;
        });
    }

    /// <summary>The row as it stands now, with what couldn't be saved as it was typed, to be tried once more.</summary>
    /// <param name="row">The reed and its log, read again.</param>
    /// <param name="typed">The row as it was posted.</param>
    /// <param name="problems">What couldn't be saved.</param>
    /// <param name="newOperation">Makes an operation for each cell.</param>
    public static FirstLookForm Over(ReedAtBench row, FirstLookForm typed, ProblemList problems, Func<OperationId> newOperation) => new(row, test =>
    {
        var cell = Standing(row.Log, test, newOperation());
        if (Fields.Any(field => problems.For(Name(typed.Number, test, field)) is not null))
        {
            cell.Typed[nameof(Test.Step)] = typed[test].Typed[nameof(Test.Step)];
            cell.Typed[nameof(Test.Pitch)] = typed[test].Typed[nameof(Test.Pitch)];
        }

        return cell;
    });

    /// <summary>The name of a field of a row.</summary>
    /// <param name="number">The number on the reed's tag.</param>
    /// <param name="test">The test.</param>
    /// <param name="field">The field of the test.</param>
    public static string Name(int number, TestKind test, string field) => string.Create(CultureInfo.InvariantCulture, $"R{number}.{test}.{field}");

    /// <summary>The name of the field that carries a cell's operation.</summary>
    /// <param name="number">The number on the reed's tag.</param>
    /// <param name="test">The test.</param>
    public static string OperationName(int number, TestKind test) => Name(number, test, Operation);

    /// <summary>The name of the field that carries the entry a cell would replace.</summary>
    /// <param name="number">The number on the reed's tag.</param>
    /// <param name="test">The test.</param>
    public static string SeenName(int number, TestKind test) => Name(number, test, Seen);

    /// <summary>The first time this test was tried before any work.</summary>
    /// <param name="log">The reed's log.</param>
    /// <param name="test">The test.</param>
    public static BenchFact? Arrival(BenchLog log, TestKind test) =>
        log.Facts.FirstOrDefault(fact => fact.Pass == 0 && fact.Now is Test { MeasuredFrom: null } said && said.TestKind == test);

    private static TestForm Standing(BenchLog log, TestKind test, OperationId operation) =>
        Arrival(log, test) is { } fact ? (TestForm)EntryForm.Correcting(fact, operation) : Empty(test, operation, null, log);

    private static TestForm Empty(TestKind test, OperationId operation, EntryId? seen, BenchLog log)
    {
        var form = EntryForm.New(EntryKind.Test, operation);
        var cell = (TestForm)(seen is { } tail ? form.Over(tail, operation) : form);
        cell.Typed[nameof(TestKind)] = test.ToString();
        cell.Typed[nameof(Test.Words)] = (Arrival(log, test)?.Now as Test)?.Words ?? "";
        return cell;
    }

    private Test? AsShown(EntryId? seen)
    {
        var tail = log.History.FirstOrDefault(line => line.Entry.Id == seen)?.Entry;
        return tail is null
            ? null
            : BenchLog.Fold([.. log.History.Select(line => line.Entry).Where(entry => entry.Sequence <= tail.Sequence)])
                .FactOf(tail.Id)?.Now as Test;
    }

    // New is what differs from what the form showed, and that isn't what stands by now: somebody may have tested between.
    private bool IsNew(TestForm cell)
    {
        var standing = AsShown(cell.Seen);
        var step = standing?.Step?.ToString(CultureInfo.InvariantCulture) ?? "";
        return cell.Typed[nameof(Test.Step)] != step || cell.Typed[nameof(Test.Pitch)].Trim() != (standing?.Pitch?.Text ?? "");
    }
}
