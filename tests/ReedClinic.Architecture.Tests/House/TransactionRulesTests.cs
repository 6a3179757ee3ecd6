using System.Reflection;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

public sealed class TransactionRulesTests
{
    /// <summary>Files that begin one otherwise, each with its reason.</summary>
    private static readonly Dictionary<string, string> Exceptions = new()
    {
        ["src/ReedClinic.Data/Engine/Attempt.cs"] = "Here every other one is begun.",
        ["src/ReedClinic.Data/Engine/PostgresCopy.cs"] = "It only reads, for a back-up that is told to have failed and made again as a whole.",
        ["src/ReedClinic.Data/Engine/RowsMove.cs"] = "It fills an empty database by a command, all or nothing, and whoever gave the command is told.",
    };

    [Fact]
    public void Every_transaction_is_begun_by_a_try_that_waits() => Found.None(TransactionRules.Violations(Repository.Production, Exceptions));

    [Fact]
    public void Every_exception_is_still_needed() => Found.None(
        Exceptions.Keys.Where(path => TransactionRules.Violations(Repository.Production.Where(file => file.Path == path), new Dictionary<string, string>()).ToList() is []));

    [Fact]
    public void A_try_is_made_by_patience_alone() =>
        Found.None(TransactionRules.WaysToMake(Assembly.Load("ReedClinic.Data").GetType("ReedClinic.Data.Engine.Attempt", throwOnError: true)!));

    [Fact]
    public void A_book_that_begins_one_by_itself_is_seen() => Found.One(
        TransactionRules.Violations([new Source("src/ReedClinic.Data/Bench/HastyBook.cs", "\nvar t = await db.Database.BeginTransactionAsync(ct);")], Exceptions),
        "src/ReedClinic.Data/Bench/HastyBook.cs:2");

    [Fact]
    public void A_try_that_anybody_can_make_is_seen() => Found.One(TransactionRules.WaysToMake(typeof(OpenAttempt)), nameof(OpenAttempt));

    public sealed class OpenAttempt;
}
