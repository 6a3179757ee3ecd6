using System.Net;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.CommonThreads;

public sealed class CommonThreadPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly Actor Teacher = new(new AccountId(NewGuid()), null, IsTeacher: true, IsOwner: false);

    private static int _codes = 500;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_sheet_tells_yes_no_and_not_looked_apart_in_words()
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();

        var (status, page, _) = await teacher.See($"/batches/{batch.Code}/common-thread");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(
            ["yes", "yes", "not looked for", "2 of the 2 looked at for it; 3 in the batch"],
            Row(page, "Tip corners too thick"));
        Assert.Equal(["no", "from our work", "suspected", "1 of the 2 looked at for it; 3 in the batch"], Row(page, "Tip too long"));
        Assert.Equal(["not looked for", "yes, as taste", "yes", "1 of the 2 looked at for it; 3 in the batch"], Row(page, "Back too thick"));
        Assert.Contains(": in both reeds looked at for it (three in the batch).", page, StringComparison.Ordinal);
        Assert.Contains("a dark fleck", page, StringComparison.Ordinal);
        Assert.DoesNotContain("%", page[page.IndexOf("<main", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_opening_that_was_tested_is_told_where_nobody_wrote_a_finding_and_is_not_counted()
    {
        var batch = await NewBatch();
        var bench = new BenchBook(Databases(), TimeProvider.System);
        Value(await bench.RecordAsync(Teacher, batch.Reeds[0].Id, Found("opening-narrow"), Operation(), Ct));
        Value(await bench.RecordAsync(Teacher, batch.Reeds[1].Id, Value(Domain.Bench.Test.Of(TestKind.Opening, 2)), Operation(), Ct));
        using var teacher = await host.Teacher();

        var row = Row((await teacher.See($"/batches/{batch.Code}/common-thread")).Page, "Opening too narrow");

        Assert.Equal(["yes", "not noted opening tested: right", "not looked for", "1 of the 1 looked at for it; 3 in the batch"], row.Select(cell => string.Join(' ', cell.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))));
    }

    [Fact]
    public async Task What_no_two_reeds_share_is_not_offered_as_the_common_lesson()
    {
        var batch = await NewBatch();
        await Say(batch.Reeds[0].Id, Found("tip-corners-thick"));
        await Say(batch.Reeds[1].Id, Found("back-thick"));
        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}/common-thread";

        var apart = (await teacher.See(path)).Page;
        await Say(batch.Reeds[2].Id, Found("back-thick"));
        var shared = (await teacher.See(path)).Page;

        static (bool Apart, bool Corners, bool Back) Says(string page) => (Has(page, "Nothing is shared yet"), Has(page, "value=\"tip-corners-thick\""), Has(page, "value=\"back-thick\""));
        static bool Has(string page, string words) => page.Contains(words, StringComparison.Ordinal);
        Assert.Equal((true, false, false), Says(apart));
        Assert.Equal((false, false, true), Says(shared));
    }

    [Fact]
    public async Task A_reed_that_was_tested_is_not_said_to_be_unlooked_at()
    {
        var batch = await NewBatch();
        await Say(batch.Reeds[0].Id, Found("back-thick"));
        await Say(batch.Reeds[1].Id, Value(Domain.Bench.Test.Of(TestKind.Seal, 2)));
        await Say(batch.Reeds[1].Id, Value(Domain.Bench.Test.Of(TestKind.Effort, 2)));
        using var teacher = await host.Teacher();
        var page = (await teacher.See($"/batches/{batch.Code}/common-thread")).Page;

        Assert.Equal(["yes", "not noted", "not looked for", "1 of the 1 looked at for it; 3 in the batch"], Row(page, "Back too thick"));
        Assert.Equal(["nothing yet", "seal, effort", "nothing yet", ""], Row(page, "Tested before any work"));
    }

    [Fact]
    public async Task How_sure_it_is_comes_in_one_sentence_before_anything_and_how_it_is_counted_is_folded()
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();

        var (_, page, _) = await teacher.See($"/batches/{batch.Code}/common-thread/evidence");

        using var document = new HtmlParser().ParseDocument(page);
        Assert.Equal("Reeds so far: 3. Enough to see what they share, too few to say how often it comes back.", document.QuerySelector("h1 + p")!.TextContent);
        var folded = document.QuerySelector("details.how:not([open])")!.TextContent;
        Assert.All(["95 % interval", "Newcombe", "There is nothing to compare with"], words => Assert.Contains(words, folded, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_counts_page_says_in_one_plain_sentence_what_its_line_means_before_the_source()
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();

        var (_, page, _) = await teacher.See($"/batches/{batch.Code}/common-thread/evidence");

        var plain = page.IndexOf("a short line can be trusted further than a long one", StringComparison.Ordinal);
        Assert.InRange(plain, 0, page.IndexOf("Newcombe", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_choice_is_kept_and_the_habit_is_said_as_perhaps()
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}/common-thread";

        using var answer = await (await Form.At(teacher, path))
            .Set("Form.LessonKind", "tip-corners-thick")
            .Set("Form.LessonWords", "Thin the two corners before anything else.")
            .Set("Form.HabitWords", "The knife is lifted too early.")
            .Post();

        Assert.Equal($"{path}?kept=true", answer.Leads());
        var page = (await teacher.See($"{path}?kept=true")).Page;
        Assert.Contains("Your choice is kept", page, StringComparison.Ordinal);
        Assert.Contains("Perhaps the knife is lifted too early.", page, StringComparison.Ordinal);
        Assert.Equal("tip-corners-thick", Form.Of(teacher, path, page)["Form.LessonKind"]);
    }

    [Fact]
    public async Task A_form_that_was_opened_before_somebody_else_chose_shows_their_choice_and_keeps_what_was_typed()
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}/common-thread";
        var form = (await Form.At(teacher, path)).Set("Form.LessonWords", "mine, typed with care");
        await Threads().ChooseAsync(
            Teacher, batch.Code, new ThreadChoice(new FindingKindId("back-thick"), "theirs"), Guid.Empty, Operation(), Ct);

        using var answer = await form.Post();
        var page = (await answer.Read()).Page;

        Assert.Contains("Back too thick: theirs", page, StringComparison.Ordinal);
        Assert.Contains("mine, typed with care", page, StringComparison.Ordinal);

        using var again = await Form.Of(teacher, path, page).Post();
        Assert.Equal($"{path}?kept=true", again.Leads());
        Assert.Equal("mine, typed with care", (await Threads().FindAsync(Teacher, batch.Code, Ct))!.Chosen!.LessonWords);
    }

    [Theory]
    [InlineData("Form.LessonWords", "", "f-Form-LessonKind-error")]
    [InlineData("Form.LessonKind", "no-such-thing", "f-Form-LessonKind-error")]
    [InlineData("Form.HabitWords", "bell\a", "f-Form-HabitWords-error")]
    public async Task What_can_not_be_taken_is_said_beside_its_field(string field, string typed, string error)
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();

        using var answer = await (await Form.At(teacher, $"/batches/{batch.Code}/common-thread"))
            .Set("Form.LessonKind", "").Set(field, typed).Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains($"id=\"{error}\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_evidence_page_gives_counts_and_the_range_in_words()
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();

        var page = (await teacher.See($"/batches/{batch.Code}/common-thread/evidence")).Page;

        Assert.Equal(
            ["2 of the 2 looked at for it; 3 in the batch", "not looked for", "2 of the 2 looked at for it; 3 in all", "between 29 and 100 in a hundred reeds", "too few batches to tell"], Row(page, "Tip corners too thick"));
        Assert.Contains("Newcombe", page, StringComparison.Ordinal);
        Assert.Contains("There is nothing to compare with", page, StringComparison.Ordinal);
        Assert.Contains("One batch alone shows what these reeds have in common", page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_done_well_is_asked_about_before_the_lesson_and_the_lesson_has_its_sentence()
    {
        var batch = await WorkedOnBatch();
        await Say(batch.Reeds[0].Id, Found("spine-intact", FindingCharacter.Strength));
        using var teacher = await host.Teacher();

        var page = (await teacher.See($"/batches/{batch.Code}/common-thread")).Page;

        Assert.InRange(page.IndexOf("value=\"spine-intact\"", StringComparison.Ordinal), 0, page.IndexOf("value=\"tip-corners-thick\"", StringComparison.Ordinal));
        Assert.Contains("Tip corners too thick: in both reeds looked at for it (three in the batch).", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_habit_is_offered_as_perhaps_with_how_to_check_it_and_is_kept_when_nothing_else_was_typed()
    {
        var batch = await WorkedOnBatch();
        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}/common-thread";
        var page = (await teacher.See(path)).Page;

        Assert.Contains("Perhaps the knife leaves the cane before it comes to the corners.", page, StringComparison.Ordinal);
        Assert.Contains("Blacken the corners with a pencil", page, StringComparison.Ordinal);
        Assert.Contains(Domain.Catalogues.Catalogue.Shipped.Find(new Domain.Catalogues.TestCardId("look-plaque"))!.Name, page, StringComparison.Ordinal);

        using var answer = await Form.Of(teacher, path, page).Set("Form.HabitFrom", "short-of-the-corners").Post();

        Assert.Equal($"{path}?kept=true", answer.Leads());
        Assert.Equal("Perhaps the knife leaves the cane before it comes to the corners.", (await Threads().FindAsync(Teacher, batch.Code, Ct))!.Chosen!.HabitSentence);

        await Say(batch.Reeds[0].Id, Found("bumps"));
        await Say(batch.Reeds[1].Id, Found("bumps"));
        using var other = await (await Form.At(teacher, path)).Set("Form.HabitFrom", "blunt-knife").Post();
        Assert.StartsWith("Perhaps the knife is blunt", (await Threads().FindAsync(Teacher, batch.Code, Ct))!.Chosen!.HabitSentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_batch_without_a_finding_says_what_to_do_first()
    {
        var batch = await NewBatch();
        using var teacher = await host.Teacher();

        var page = (await teacher.See($"/batches/{batch.Code}/common-thread")).Page;

        Assert.Contains($"/batches/{batch.Code}/first-look", page, StringComparison.Ordinal);
        Assert.Contains("nothing to compare", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/evidence")]
    public async Task It_is_for_those_who_work_here_and_for_batches_that_are_there(string sub)
    {
        var batch = await NewBatch();
        using var student = await host.Student();
        using var teacher = await host.Teacher();

        Assert.StartsWith("/account/not-yours", (await student.See($"/batches/{batch.Code}/common-thread{sub}")).Location, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See($"/batches/{BatchCode.FromNumber(7)}/common-thread{sub}")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See($"/batches/nonsense/common-thread{sub}")).Status);
    }

    private static Guid NewGuid() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());

    private static OperationId Operation() => new(NewGuid());

    private static string[] Row(string page, string heading)
    {
        using var document = new HtmlParser().ParseDocument(page);
        var row = document.QuerySelectorAll("tr").Single(tr => tr.QuerySelector("th[scope=row]")?.TextContent.Trim() == heading);
        return [.. row.QuerySelectorAll("td").Select(cell => cell.TextContent.Trim())];
    }

    private static Finding Found(
        string kind, FindingCharacter character = FindingCharacter.Fault, Arose arose = Arose.AsItArrived, Certainty certainty = Certainty.Certain) =>
        Value(Finding.Of(
            new FindingKindId(kind), character, new Place(Zone.TipCorners), arose: arose, certainty: certainty, words: "a dark fleck"));

    private static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private CommonThreadBook Threads() => new(Databases(), TimeProvider.System);

    private IDbContextFactory<ClinicDb> Databases() => host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>();

    private async Task<Batch> NewBatch()
    {
        var student = new Student(new StudentId(NewGuid()), "Ines");
        var batch = Batch.Announce(
            new BatchId(NewGuid()),
            BatchCode.FromNumber(Interlocked.Increment(ref _codes)),
            student.Id,
            Operation(),
            new AnnouncedBatch(
                null, null, null, [.. Enumerable.Range(1, 3).Select(n => new AnnouncedReed($"knot {n}", "It is tight.", Permission.TakeRisks))], []),
            NewGuid,
            TimeProvider.System.GetUtcNow());
        await using var db = await Databases().CreateDbContextAsync(Ct);
        db.AddRange(student, batch);
        await db.SaveChangesAsync(Ct);
        return batch;
    }

    private async Task Say(ReedId reed, BenchEntry entry) =>
        Value(await new BenchBook(Databases(), TimeProvider.System).RecordAsync(Teacher, reed, entry, Operation(), Ct));

    private async Task<Batch> WorkedOnBatch()
    {
        var batch = await NewBatch();
        var bench = new BenchBook(Databases(), TimeProvider.System);
        BenchEntry[][] said =
        [
            [Found("tip-corners-thick"), Value(LookedFor.Of(new FindingKindId("tip-long"))), Found("something-else")],
            [Found("tip-corners-thick"), Found("tip-long", arose: Arose.CausedByTheWork), Found("back-thick", FindingCharacter.Taste)],
            [Found("tip-long", certainty: Certainty.Suspected), Found("back-thick")],
        ];
        foreach (var (entries, reed) in said.Zip(batch.Reeds))
        {
            foreach (var entry in entries)
            {
                Value(await bench.RecordAsync(Teacher, reed.Id, entry, Operation(), Ct));
            }
        }

        return batch;
    }
}
