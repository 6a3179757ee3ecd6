using System.Net;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.OverTime;

public sealed class OverTimePagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string Mine = "/batches/over-time";

    private static readonly Actor Teacher = new(new AccountId(NewGuid()), null, IsTeacher: true, IsOwner: false);

    private static int _codes = 7000;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_yet_says_what_to_do_first()
    {
        using var student = await host.Student();

        var (status, page, _) = await student.See(Mine);

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("There is nothing to show yet", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/intake\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_batch_is_shown_and_says_that_the_next_one_will_tell_more()
    {
        var (client, student) = await StudentAsync();
        using var _ = client;
        await BatchAsync(student, 1, sent: true, ["+tip-thin"], ["-tip-thin"], []);

        var page = (await client.See(Mine)).Page;

        Assert.Contains("This is the first batch here.", page, StringComparison.Ordinal);
        Assert.Contains("Seen in one batch so far.", page, StringComparison.Ordinal);
        Assert.Contains("aria-label=\"Batch 1: 1 of 2, 1 of them looked at in part.\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_goes_well_comes_first_each_picture_has_its_words_and_there_are_no_odds_or_intervals()
    {
        var (client, student) = await StudentAsync();
        using var _ = client;
        await BatchAsync(student, 1, sent: true, ["+tip-thin", "+spine-intact"], ["+tip-thin", "+spine-intact"]);
        await BatchAsync(student, 2, sent: true, ["-tip-thin", "+spine-intact"], ["-tip-thin", "+spine-intact"]);
        await BatchAsync(student, 3, sent: false, ["+bumps"]);

        var page = (await client.See(Mine)).Page;
        using var document = new HtmlParser().ParseDocument(page);

        Assert.Equal(["What goes well", "What to work on"], document.QuerySelectorAll("section.over-time h2").Select(heading => heading.TextContent));
        Assert.Equal(["Batch 1: 2 of 2; Batch 2: 2 of 2.", "Batch 1: 2 of 2; Batch 2: 0 of 2, 2 of them looked at in part."], document.QuerySelectorAll("svg.reeds-row").Select(svg => svg.GetAttribute("aria-label")));
        Assert.Equal(["2 of 2", "0 of 2, 2 of them looked at in part"], document.QuerySelectorAll("table.time-table tbody tr")[1].QuerySelectorAll("td").Select(cell => cell.TextContent));
        Assert.Contains("too soon to call it gone", page, StringComparison.Ordinal);
        var main = document.QuerySelector("main")!.TextContent;
        Assert.DoesNotContain("bumps", main, StringComparison.OrdinalIgnoreCase);
        foreach (var odd in new[] { "%", "in a hundred", "interval", "NaN", "p =" })
        {
            Assert.DoesNotContain(odd, main, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Many_batches_are_all_in_the_table_and_the_latest_are_drawn()
    {
        var (client, student) = await StudentAsync();
        using var _ = client;
        for (var number = 1; number <= 14; number++)
        {
            await BatchAsync(student, number, sent: true, ["+tip-thin"]);
        }

        using var document = new HtmlParser().ParseDocument((await client.See(Mine)).Page);

        Assert.Equal(14, document.QuerySelectorAll("ol.time-batches li").Length);
        Assert.Equal(14, document.QuerySelectorAll("table.time-table tbody td").Length);
        Assert.Equal([.. Enumerable.Range(3, 12).Select(number => $"{number}")], document.QuerySelectorAll("svg.reeds-row text").Select(text => text.TextContent));
        Assert.Contains("the latest twelve batches", document.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Still there.", document.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_teacher_sees_the_same_with_batches_whose_letter_is_not_sent()
    {
        var (client, student) = await StudentAsync();
        client.Dispose();
        await BatchAsync(student, 1, sent: false, ["+bumps"]);
        using var teacher = await host.Teacher();

        var (status, page, _) = await teacher.See($"/desk/students/{student.Value}/over-time");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("(no letter yet)", page, StringComparison.Ordinal);
        Assert.Contains($"/desk/students/{student.Value}/over-time", (await teacher.See($"/desk/students/{student.Value}")).Page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See($"/desk/students/{NewGuid()}/over-time")).Status);
    }

    private static Guid NewGuid() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());

    private static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private IDbContextFactory<ClinicDb> Databases() => host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>();

    private async Task<(HttpClient Client, StudentId Student)> StudentAsync()
    {
        var account = await host.Admit("Sanne", ClinicHost.NewEmail("Sanne"));
        await using var db = await Databases().CreateDbContextAsync(Ct);
        return (await host.SignedIn(account), (await db.Set<Student>().SingleAsync(row => row.Account == account, Ct)).Id);
    }

    private async Task BatchAsync(StudentId student, int month, bool sent, params string[][] reeds)
    {
        var batch = Batch.Announce(
            new BatchId(NewGuid()),
            BatchCode.FromNumber(Interlocked.Increment(ref _codes)),
            student,
            new OperationId(NewGuid()),
            new AnnouncedBatch(null, null, null, [.. reeds.Select((_, at) => new AnnouncedReed($"knot {at}", "It is tight.", Permission.TakeRisks))], []),
            NewGuid,
            new DateTimeOffset(2024, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMonths(month));
        await using (var db = await Databases().CreateDbContextAsync(Ct))
        {
            db.Add(batch);
            await db.SaveChangesAsync(Ct);
        }

        var bench = new BenchBook(Databases(), TimeProvider.System);
        foreach (var (said, reed) in reeds.Zip(batch.Reeds))
        {
            foreach (var word in said)
            {
                Value(await bench.RecordAsync(Teacher, reed.Id, Entry(word), new OperationId(NewGuid()), Ct));
            }
        }

        if (sent)
        {
            await using var db = await Databases().CreateDbContextAsync(Ct);
            await db.Set<Batch>().Where(row => row.Id == batch.Id)
                .ExecuteUpdateAsync(row => row.SetProperty(one => one.LetterSentAt, batch.SubmittedAt.AddDays(4)), Ct);
        }
    }

    private static BenchEntry Entry(string word)
    {
        var kind = new FindingKindId(word[1..]);
        return word[0] == '-' ? Value(LookedFor.Of(kind)) : Value(Finding.Of(kind, FindingCatalogue.Find(kind)!.Usually, new Place(Zone.TipCorners)));
    }
}
