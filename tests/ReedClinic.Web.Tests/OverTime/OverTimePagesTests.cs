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
using ReedClinic.Web.Tests.Guardians;
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
        using var document = new HtmlParser().ParseDocument(page);
        Assert.Equal(["there", "in-part", "unseen"], document.QuerySelectorAll(".reeds-rows .little-reed").Select(reed => reed.ClassList.Single(one => one != "little-reed")));
        Assert.Equal("on 1 of the 2 looked at for it; 3 in the batch; 1 only partly checked", document.QuerySelector(".reeds-rows .many")!.TextContent);
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

        Assert.Equal(["What goes well", "What the latest reeds don’t show"], document.QuerySelectorAll("section.over-time h2").Select(heading => heading.TextContent));
        Assert.Equal(
            ["1 Feb 2024: on 2 of 2", "1 Mar 2024: on 2 of 2", "1 Feb 2024: on 2 of 2", "1 Mar 2024: on none of 2; 2 only partly checked"],
            document.QuerySelectorAll(".reeds-rows li").Select(row => $"{row.QuerySelector(".when")!.TextContent}: {row.QuerySelector(".many")!.TextContent}"));
        Assert.Equal(["What", "1 Feb 2024", "1 Mar 2024"], document.QuerySelectorAll("table.time-table th[scope=col]").Select(cell => cell.TextContent));
        Assert.Equal(["on 2 of 2", "on none of 2; 2 only partly checked"], document.QuerySelectorAll("table.time-table tbody tr")[1].QuerySelectorAll("td").Select(cell => cell.TextContent));
        Assert.Contains("too soon to call it gone", page, StringComparison.Ordinal);
        var main = document.QuerySelector("main")!.TextContent;
        Assert.DoesNotContain("good sign", main, StringComparison.Ordinal);
        Assert.Equal(["Spine whole", "Tip too thin"], document.QuerySelectorAll(".over-time h3").Select(heading => heading.TextContent));
        Assert.Equal(["Tip", "Spine"], document.QuerySelectorAll("dl dt").Select(word => word.TextContent));
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

        Assert.Equal(14, document.QuerySelectorAll("ul.time-batches li").Length);
        Assert.Equal(14, document.QuerySelectorAll("table.time-table tbody td").Length);
        Assert.Equal(("1 Apr 2024", "1 Mar 2025", 12), (document.QuerySelector(".reeds-rows .when")!.TextContent, document.QuerySelectorAll(".reeds-rows .when")[^1].TextContent, document.QuerySelectorAll(".reeds-rows li").Length));
        Assert.Contains("the latest twelve batches", document.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Still there.", document.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_longer_there_is_good_news_and_stands_first_apart_from_what_came_in_its_place()
    {
        var (client, student) = await StudentAsync();
        using var _ = client;
        await BatchAsync(student, 1, sent: true, ["+tip-corners-thick -tip-not-separate"], ["+tip-corners-thick -tip-not-separate +spine-intact"]);
        await BatchAsync(student, 2, sent: true, ["-tip-corners-thick +tip-not-separate"], ["-tip-corners-thick +tip-not-separate +spine-intact"]);

        using var document = new HtmlParser().ParseDocument((await client.See(Mine)).Page);

        Assert.Equal(["What is no longer there", "What goes well", "What to work on"], document.QuerySelectorAll("section.over-time h2").Select(heading => heading.TextContent));
        var (gone, come) = (document.QuerySelectorAll("section.over-time")[0], document.QuerySelectorAll("section.over-time")[2]);
        Assert.Equal("Corners of the tip too thick", gone.QuerySelector("h3")!.TextContent);
        Assert.Contains("the latest reeds are free of it: good news", gone.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, gone.QuerySelectorAll(".little-reed .mark.past").Length);
        Assert.Equal(2, gone.QuerySelectorAll(".little-reed.rid").Length);
        Assert.Empty(gone.QuerySelectorAll(".little-reed .mark.fault"));
        Assert.Equal("Tip not separate from the heart", come.QuerySelector("h3")!.TextContent);
        Assert.DoesNotContain("corners", come.TextContent, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Whoever_answers_for_a_student_reads_what_the_student_reads_and_is_not_spoken_to_as_the_student()
    {
        using var younger = await host.YoungerAsync("Embla Vale");
        var (guardian, ward) = await host.AgreedAsync(younger, ClinicHost.NewEmail("rosa"));
        using var _ = guardian;
        var student = new StudentId(Guid.Parse(ward.Split('/')[^1]));
        Assert.Contains("It begins with the first letter", (await guardian.See($"{ward}/over-time")).Page, StringComparison.Ordinal);
        await BatchAsync(student, 1, sent: true, ["+tip-thin +spine-intact"], ["+tip-thin +spine-intact"]);
        await BatchAsync(student, 2, sent: true, ["-tip-thin +spine-intact"], ["-tip-thin +spine-intact"]);
        await BatchAsync(student, 3, sent: false, ["+bumps"]);

        using var theirs = new HtmlParser().ParseDocument((await guardian.See($"{ward}/over-time")).Page);
        using var own = new HtmlParser().ParseDocument((await younger.See(Mine)).Page);
        var main = theirs.QuerySelector("main")!.TextContent;

        Assert.Equal("Embla Vale’s reeds over time", theirs.QuerySelector("h1")!.TextContent.Trim());
        Assert.Equal(Rows(own), Rows(theirs));
        Assert.Equal(6, Rows(theirs).Count());
        Assert.DoesNotContain("bumps", main, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(@"\b[Yy]ours?\b|\b[Yy]ou\b|%|NaN", main);
        Assert.Equal(ward, theirs.QuerySelector(".over-time-back a")!.GetAttribute("href"));
        Assert.Contains($"{ward}/over-time", (await guardian.See(ward)).Page, StringComparison.Ordinal);

        static IEnumerable<string> Rows(AngleSharp.Html.Dom.IHtmlDocument page) => page.QuerySelectorAll(".over-time h3, .reeds-rows li").Select(one => one.TextContent.Trim());
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
            foreach (var word in said.SelectMany(words => words.Split(' ')))
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
