using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Batches;

public sealed class DeskPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_teacher_finds_every_batch_on_the_desk_and_the_way_to_the_work()
    {
        using var student = await host.Student("Tilde");
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        var code = await walk.Send();
        using var teacher = await host.Teacher();

        Assert.Equal("/desk", (await teacher.See("/")).Location);
        var desk = (await teacher.See("/desk")).Page;
        Assert.Contains(code, desk, StringComparison.Ordinal);
        Assert.Contains("Tilde", desk, StringComparison.Ordinal);
        Assert.Contains($"/batches/{code}/arrival", (await teacher.See($"/batches/{code}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_told_today_is_said_with_its_time_and_as_a_sentence()
    {
        using var student = await host.Student("Torun");
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        await walk.Send();

        using var page = new AngleSharp.Html.Parser.HtmlParser().ParseDocument((await student.See("/batches")).Page);

        Assert.Matches(@"you told us of them today at \d\d:\d\d", page.QuerySelector("main")!.TextContent);
    }

    [Fact]
    public async Task Pressing_twice_that_the_reeds_are_posted_moves_them_one_stage_and_no_further()
    {
        using var student = await host.Student("Sunniva");
        var batch = (await host.Announce("Sunniva", "blue thread")).Batch;
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            var row = await db.Set<Batch>().SingleAsync(sent => sent.Id == batch.Id, TestContext.Current.CancellationToken);
            row.Reach(Stage.LetterSent, TimeProvider.System.GetUtcNow());
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}";
        var form = Form.Named(teacher, path, (await teacher.See(path)).Page, "onward");
        using var first = await form.Post();
        using var second = await form.Post();

        Assert.Equal((path, path), (first.Leads(), second.Leads()));
        await using var after = host.Services.CreateAsyncScope();
        var desk = after.ServiceProvider.GetRequiredService<DeskBook>();
        var actor = new Actor(new AccountId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), null, IsTeacher: true, IsOwner: false);
        Assert.Equal(Stage.OnItsWayHome, (await desk.BatchAsync(actor, batch.Code, TestContext.Current.CancellationToken))!.Batch.Stage);
    }

    [Fact]
    public async Task Reeds_that_were_noted_as_posted_by_mistake_are_here_again_and_whoever_takes_it_back_reads_first_of_the_mail()
    {
        using var student = await host.Student("Runa");
        var batch = (await host.Announce("Runa", "blue thread")).Batch;
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            (await db.Set<Batch>().SingleAsync(sent => sent.Id == batch.Id, TestContext.Current.CancellationToken)).Reach(Stage.LetterSent, TimeProvider.System.GetUtcNow());
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}";
        Assert.DoesNotContain("id=\"not-posted\"", (await teacher.See(path)).Page, StringComparison.Ordinal);
        using var posted = await Form.Named(teacher, path, (await teacher.See(path)).Page, "onward").Post();
        var page = (await teacher.See(path)).Page;
        Assert.Contains("id=\"not-posted\"", page, StringComparison.Ordinal);
        Assert.Matches("A mail about it waits to go out|A mail went out on|No mail has gone out", page);

        using var taken = await Form.Named(teacher, path, page, "not-posted").Post();

        Assert.Equal(path, taken.Leads());
        Assert.Contains("That the reeds were posted back was taken back on", (await teacher.See(path)).Page, StringComparison.Ordinal);
        Assert.Contains("Your reeds are still at the studio: it had been noted by mistake that they were posted.", (await student.See(path)).Page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"not-posted\"", (await student.See(path)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_student_is_kept_from_the_desk_and_from_the_work()
    {
        using var student = await host.Student("Nils");
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        var code = await walk.Send();

        Assert.StartsWith("/account/not-yours", (await student.See("/desk")).Location, StringComparison.Ordinal);
        Assert.DoesNotContain($"/batches/{code}/arrival", (await student.See($"/batches/{code}")).Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/batches/222-2222")]
    [InlineData("/batches/no-code")]
    public async Task A_batch_that_is_not_there_is_not_found(string path)
    {
        using var teacher = await host.Teacher();
        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See(path)).Status);
    }
}
