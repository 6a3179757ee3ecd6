using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Guardians;

/// <summary>Younger students and who answers for them, as they come and go by the pages.</summary>
internal static partial class YoungPeople
{
    /// <summary>A younger student, signed in.</summary>
    public static async Task<HttpClient> YoungerAsync(this ClinicHost host, string name)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var made = await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(
            new NewAccount(name, ClinicHost.NewEmail(name.Split(' ')[0]), ClinicHost.Password) { Age = AgeAnswer.Younger }, Role.Student, Parcel.NewOperation(), TestContext.Current.CancellationToken);
        return await host.SignedIn(Assert.IsType<Outcome<AccountId>.Done>(made).Value, SignInWay.Password);
    }

    /// <summary>Has a guardian asked.</summary>
    /// <returns>The address of the page that asks them.</returns>
    public static async Task<string> AskedAsync(this ClinicHost host, HttpClient student, string email, string guardian = "Rosa")
    {
        using var asked = await Form.Named(student, "/guardian", (await student.See("/guardian")).Page, "guardian").Set("Form.Name", guardian).Set("Form.Email", email).Post();
        Assert.Equal("/guardian", asked.Leads());
        return await host.Mailed(email, "/guardian/answer/");
    }

    /// <summary>A guardian who agreed, signed in, and the address of their page about the student.</summary>
    public static async Task<(HttpClient Guardian, string Ward)> AgreedAsync(this ClinicHost host, HttpClient student, string email, string called = "Rosa")
    {
        var question = await host.AskedAsync(student, email, called);
        var guardian = host.Visitor();
        using var agreed = await Form.Named(guardian, question, (await guardian.See(question)).Page, "agree").Set("Form.Name", called).Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal("/wards", agreed.Leads());
        return (guardian, WardPath().Match((await guardian.See("/wards")).Page).Value);
    }

    /// <summary>What a page says, in plain letters.</summary>
    public static async Task<string> TextAsync(this HttpClient who, string path)
    {
        var (status, page, _) = await who.See(path);
        Assert.Equal(HttpStatusCode.OK, status);
        return Space().Replace(WebUtility.HtmlDecode(page), " ");
    }

    [GeneratedRegex("/wards/[0-9a-f-]{36}")]
    private static partial Regex WardPath();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
