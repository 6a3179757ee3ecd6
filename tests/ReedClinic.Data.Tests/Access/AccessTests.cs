using System.Collections;
using System.Reflection;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.Access;

/// <summary>
/// The table docs/access/books.tsv against every public operation of every Book: what nobody may see gives nothing and
/// changes nothing. OWASP ASVS 5.0: 8.1.1 (the rules are written down), 8.2.2 (object level), 8.3.1 (in the trusted layer).
/// </summary>
public sealed class AccessTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Yes = "yes";
    private const string No = "no";
    private const string Open = "open";

    private static readonly IReadOnlyList<AccessRow> Rows = AccessTable.Read("books.tsv");

    private static readonly IReadOnlyList<Type> Books =
        [.. typeof(ClinicDb).Assembly.GetExportedTypes().Where(type => type.IsClass && type.Name.EndsWith("Book", StringComparison.Ordinal))];

    [Fact]
    public void Every_operation_of_every_book_has_a_row_and_every_row_an_operation()
    {
        var operations = Books.SelectMany(Operations).Select(Name).Distinct().Order(StringComparer.Ordinal);

        Assert.Equal(operations, Rows.Select(row => row.Name).Order(StringComparer.Ordinal));
        Assert.All(Rows.SelectMany(row => row.Cells.Values), cell => Assert.Contains(cell, new[] { Yes, No, Open }));
        Assert.All(Rows.Where(row => row.Cells.Values.Contains(Open)), row => Assert.NotEmpty(row.Why));
    }

    [Fact]
    public void Only_what_asks_nobody_who_they_are_is_open()
    {
        var open = Books.SelectMany(Operations).Where(operation => operation.GetParameters().All(p => p.ParameterType != typeof(Actor)));

        Assert.Equal(
            open.Select(Name).Distinct().Order(StringComparer.Ordinal),
            Rows.Where(row => row.Cells.Values.All(cell => cell == Open)).Select(row => row.Name).Order(StringComparer.Ordinal));
    }

    [Theory, OnBothEngines]
    public async Task Nobody_gets_or_changes_what_the_table_keeps_from_them(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = await AccessScene.OpenAsync(db);
        var wrong = new List<string>();
        var cells = 0;
        foreach (var row in Rows.Where(row => !row.Cells.Values.Contains(Open)))
        {
            foreach (var operation in Books.SelectMany(Operations).Where(operation => Name(operation) == row.Name))
            {
                foreach (var (who, expected) in row.Cells)
                {
                    cells++;
                    var before = await scene.StoredAsync();
                    var answer = await CallAsync(db, scene, operation, scene.Actors[who]);
                    var changed = before != await scene.StoredAsync();
                    var got = answer ?? changed;
                    if (expected == No ? got || changed : !got)
                    {
                        wrong.Add($"{row.Name} as {who}: expected {expected}, but it {(got ? "gave something" : "gave nothing")}{(changed ? " and changed something" : "")}");
                    }
                }
            }
        }

        Assert.Empty(wrong);
        Assert.True(cells >= Rows.Where(row => !row.Cells.Values.Contains(Open)).Sum(row => row.Cells.Count), $"Only {cells} cells were tried.");
    }

    private static IEnumerable<MethodInfo> Operations(Type book) => book.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly);

    private static string Name(MethodInfo operation) => $"{operation.DeclaringType!.Name}.{operation.Name}";

    // Null for an operation without an answer: only what it changed can tell.
    private static async Task<bool?> CallAsync(TestDatabase db, AccessScene scene, MethodInfo operation, Actor actor)
    {
        await using var scope = db.Services.CreateAsyncScope();
        var arguments = operation.GetParameters()
            .Select(p => p.ParameterType == typeof(Actor) ? actor : scene.For(p.ParameterType, operation.DeclaringType)).ToArray();
        var task = (Task)operation.Invoke(scope.ServiceProvider.GetRequiredService(operation.DeclaringType!), arguments)!;
        await task;
        return task.GetType().GetProperty("Result")?.GetValue(task) switch
        {
            _ when operation.ReturnType == typeof(Task) => null,
            null or false => false,
            ChunkAnswer piece => piece.End != ChunkEnd.NotFound,
            CodeSearch search => search.Found is not null || search.Near.Count > 0,
            IEnumerable rows and not string => rows.Cast<object>().Any(),
            var outcome => outcome.GetType().Name != "NotFound",
        };
    }
}
