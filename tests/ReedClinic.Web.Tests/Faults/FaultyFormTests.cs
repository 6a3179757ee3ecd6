using System.Globalization;
using System.Net;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Localization;
using ReedClinic.Data;
using ReedClinic.Domain.Intake;
using ReedClinic.Web.Shared;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Faults;

/// <summary>
/// Something goes wrong at the first, second, third … statement or commit of a request that sends a form: whoever sent it is told in one
/// sentence and no more, and sending the same again does it once.
/// </summary>
public sealed class FaultyFormTests(FaultyHost host) : IClassFixture<FaultyHost>
{
    private const string StrideGivenBy = "REEDCLINIC_STEP_STRIDE";
    private const int QuickStride = 5;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Fault.Broken, HttpStatusCode.InternalServerError, "TroubleTitle")]
    [InlineData(Fault.BrokenAnswer, HttpStatusCode.InternalServerError, "TroubleTitle")]
    [InlineData(Fault.Away, HttpStatusCode.ServiceUnavailable, "RecordsAwayTitle")]
    public async Task A_form_that_breaks_at_any_step_is_answered_in_one_sentence_and_sent_again_once(Fault fault, HttpStatusCode status, string title)
    {
        var said = host.Services.GetRequiredService<IStringLocalizer<SharedText>>()[title].Value;
        host.FollowRequests();
        var stride = int.TryParse(Environment.GetEnvironmentVariable(StrideGivenBy), CultureInfo.InvariantCulture, out var given) ? given : QuickStride;
        using var student = await host.Student(fault.ToString());
        var (before, sent, told) = (await BatchesAsync(), 0, 0);
        for (var (step, disturbed) = (1, true); disturbed; step += stride, sent++)
        {
            var walk = await IntakeWalk.Begin(student);
            await walk.Fill(1);
            var form = await Form.At(student, $"{walk.Draft}/look-over");

            host.At.Arm(step, fault);
            using var answer = await form.Post();
            host.At.Disarm();
            disturbed = host.At.WasReached;
            if (answer.Leads() is null)
            {
                Assert.True(host.At.WasThere, "It wasn't sent although nothing went wrong.");
                Assert.Equal(status, answer.StatusCode);
                OneSentence(await answer.Content.ReadAsStringAsync(Ct), said);
                told++;
            }

            using var again = await form.Post();
            Assert.StartsWith("/batches/", again.Leads(), StringComparison.Ordinal);
        }

        Assert.True(told > 2, $"Only {told} faults.");
        Assert.Equal(before + sent, await BatchesAsync());
    }

    private static void OneSentence(string page, string said)
    {
        using var document = new HtmlParser().ParseDocument(page);
        Assert.Equal(said, Assert.Single(document.QuerySelectorAll("h1")).TextContent.Trim());
        Assert.DoesNotContain("Exception", page, StringComparison.Ordinal);
        Assert.DoesNotContain("The power is gone", page, StringComparison.Ordinal);
        Assert.DoesNotContain("The server is away", page, StringComparison.Ordinal);
    }

    private async Task<int> BatchesAsync()
    {
        await using var db = await host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(Ct);
        return await db.Set<Batch>().CountAsync(Ct);
    }
}
