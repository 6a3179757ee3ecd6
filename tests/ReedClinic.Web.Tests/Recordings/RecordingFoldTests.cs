using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Recordings;

/// <summary>What may be added to a reed stands behind one line where it is much.</summary>
public sealed class RecordingFoldTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_teacher_has_one_line_for_each_reed_and_a_student_the_two_things_that_are_theirs()
    {
        using var student = await host.Student("Renske");
        var code = (await host.Announce("Renske", "green thread", "red thread")).Batch.Code;
        using var teacher = await host.Teacher();

        using var theirs = new HtmlParser().ParseDocument((await teacher.See($"/batches/{code}")).Page);
        using var own = new HtmlParser().ParseDocument((await student.See($"/batches/{code}")).Page);

        Assert.Equal(["Add a sound or a photograph", "Add a sound or a photograph"], theirs.QuerySelectorAll(".recordings > details > summary").Select(line => line.TextContent));
        Assert.Equal(2 * 2, own.QuerySelectorAll(".recordings > details > summary").Length);
        Assert.NotEmpty(theirs.QuerySelectorAll(".add-recording form.recording-add"));
    }
}
