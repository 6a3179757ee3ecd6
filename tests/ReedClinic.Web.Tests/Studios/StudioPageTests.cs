using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Studios;

public sealed class StudioPageTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task The_owner_is_reminded_of_the_address_and_what_is_written_stands_on_the_slip()
    {
        using var owner = await Open();
        using var student = await host.Student("Fenna");
        var slip = $"/batches/{(await host.Announce("Fenna", "green thread")).Batch.Code}/slip";
        Assert.Contains("Ask your teacher where to post", (await student.See(slip)).Page, StringComparison.Ordinal);
        Assert.Contains("href=\"/studio\">Write", (await owner.See("/desk")).Page, StringComparison.Ordinal);
        var form = await Form.At(owner, "/studio");
        var older = await Form.At(owner, "/studio");

        using (var tooLong = await form.Set("Form.PostTo", new string('a', 401)).Post())
        {
            Assert.Contains("f-Form-PostTo-error", (await tooLong.Read()).Page, StringComparison.Ordinal);
        }

        using var saved = await form.Set("Form.PostTo", "7 Quay Street\nMarrow Bay").Post();
        using var clash = await older.Set("Form.PostTo", "Elsewhere 1").Post();

        Assert.Equal("/studio?done=yes", saved.Leads());
        var shown = (await clash.Read()).Page;
        Assert.Contains("7 Quay Street\nMarrow Bay", WebUtility.HtmlDecode(shown), StringComparison.Ordinal);
        Assert.Contains("Elsewhere 1</textarea>", shown, StringComparison.Ordinal);
        Assert.Contains("7 Quay Street\nMarrow Bay", WebUtility.HtmlDecode((await student.See(slip)).Page), StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"/studio\">Write", (await owner.See("/desk")).Page, StringComparison.Ordinal);
        using var second = await Form.Of(owner, "/studio", shown).Post();
        Assert.Equal("/studio?done=yes", second.Leads());
        Assert.Contains("Elsewhere 1", (await student.See(slip)).Page, StringComparison.Ordinal);
        Assert.StartsWith("/account/not-yours", (await student.See("/studio")).Location, StringComparison.Ordinal);
        using var teacher = await host.Teacher();
        Assert.StartsWith("/account/not-yours", (await teacher.See("/studio")).Location, StringComparison.Ordinal);
    }

    private async Task<HttpClient> Open()
    {
        using var visitor = host.Visitor();
        using var opened = await (await Form.At(visitor, "/first-run"))
            .Set("Form.Code", host.Services.GetRequiredService<FirstRunCode>().Text)
            .Set("Form.StudioName", "Quay Reeds").Set("Form.Name", "Mara").Set("Form.Email", "mara@harbour.example").Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal((HttpStatusCode.Found, "/account/second-step?then=/desk"), (opened.StatusCode, opened.Leads()));
        await using var scope = host.Services.CreateAsyncScope();
        var owner = await scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>().FindByEmailAsync("mara@harbour.example");
        return await host.SignedIn(new AccountId(owner!.Id));
    }
}
