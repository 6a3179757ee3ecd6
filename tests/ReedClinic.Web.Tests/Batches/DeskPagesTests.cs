using System.Net;
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
