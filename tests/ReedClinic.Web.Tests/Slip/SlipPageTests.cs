using System.Net;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Slip;

public sealed class SlipPageTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task The_slip_has_the_code_a_numbered_tag_for_each_reed_and_the_cautions_but_no_name()
    {
        using var student = await host.Student("Hinke");
        var parcel = await host.Announce("Hinke", "green thread", "green thread, cork darker");

        var (status, page, _) = await student.See($"/batches/{parcel.Batch.Code}/slip");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(2, page.Split("class=\"tag-number\"").Length - 1);
        Assert.Contains("cork darker", page, StringComparison.Ordinal);
        Assert.Contains("goes mouldy", page, StringComparison.Ordinal);
        Assert.Contains("rules of both countries", page, StringComparison.Ordinal);
        Assert.InRange(page.IndexOf("class=\"cut-line\"", StringComparison.Ordinal), page.LastIndexOf("class=\"tag-number\"", StringComparison.Ordinal), page.IndexOf("goes mouldy", StringComparison.Ordinal));
        Assert.Contains(parcel.Batch.Code.ToString(), page[page.IndexOf("class=\"cut-line\"", StringComparison.Ordinal)..page.IndexOf("goes mouldy", StringComparison.Ordinal)], StringComparison.Ordinal);
        Assert.DoesNotContain("Hinke", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Somebody_elses_slip_is_nowhere()
    {
        using var owner = await host.Student("Renske");
        var parcel = await host.Announce("Renske", "red thread");
        using var other = await host.Student("Auke");

        Assert.Equal(HttpStatusCode.NotFound, (await other.See($"/batches/{parcel.Batch.Code}/slip")).Status);
    }
}
