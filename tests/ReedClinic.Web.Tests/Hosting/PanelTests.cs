using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Web.Shared.Trouble;

namespace ReedClinic.Web.Tests.Hosting;

public sealed class PanelTests : BunitContext
{
    [Fact]
    public void A_panel_that_breaks_says_so_with_a_reference_and_can_be_tried_again()
    {
        Services.AddLocalization();
        Services.AddLogging();
        Fragile.Broken = true;
        var panel = Render<Panel>(p => p.AddChildContent<Fragile>());

        Assert.NotEmpty(panel.Find("[role=alert] code").TextContent);
        Assert.DoesNotContain("a secret detail", panel.Markup, StringComparison.Ordinal);

        Fragile.Broken = false;
        panel.Find("button").Click();

        Assert.Equal("whole", panel.Find("p").TextContent);
    }

    private sealed class Fragile : ComponentBase
    {
        public static bool Broken { get; set; }

        protected override void BuildRenderTree(Microsoft.AspNetCore.Components.Rendering.RenderTreeBuilder builder)
        {
            if (Broken)
            {
                throw new InvalidOperationException("a secret detail");
            }

            builder.AddMarkupContent(0, "<p>whole</p>");
        }
    }
}
