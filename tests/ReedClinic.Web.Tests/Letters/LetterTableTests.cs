using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>A reed’s table comes from the log: beside words that were changed by hand the teacher is told so.</summary>
public sealed class LetterTableTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly Actor Bench = new(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("reed-1-now")]
    [InlineData("reed-1-story")]
    public async Task Below_the_table_of_a_reed_with_changed_words_stands_that_it_follows_the_log(string part)
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        var reed = await Tested(code);

        Assert.Null(await NoteAsync(teacher, path));
        using var saved = await (await Form.At(teacher, path)).Set($"Block.{part}", "The low notes are still stuffy.").Post();

        Assert.Equal($"/bench/{reed.Value}", await NoteAsync(teacher, path));
        Assert.DoesNotContain("table-of-", (await teacher.See($"/letters/{code}")).Page, StringComparison.Ordinal);
    }

    // Where the note below the table leads; null where there is none.
    private static async Task<string?> NoteAsync(HttpClient teacher, string path)
    {
        using var page = new HtmlParser().ParseDocument((await teacher.See(path)).Page);
        Assert.NotNull(page.QuerySelector("table"));
        var note = page.QuerySelector("#table-of-reed-1-now");
        Assert.True(note is null || note.TextContent.Contains("follows the log", StringComparison.Ordinal));
        return note?.QuerySelector("a")!.GetAttribute("href");
    }

    private async Task<Domain.Reeds.ReedId> Tested(string code)
    {
        var batch = (await host.Services.GetRequiredService<DeskBook>().BatchAsync(Bench, Done(BatchCode.Read(code)), Ct))!.Batch;
        var log = host.Services.GetRequiredService<BenchBook>();
        foreach (var step in new[] { 1, 3 })
        {
            Done(await log.RecordAsync(Bench, batch.Reeds[0].Id, Done(Test.Of(TestKind.LowResponse, step)), new OperationId(NewId()), Ct));
        }

        return batch.Reeds[0].Id;
    }

    private static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
}
