using MudBlazor;

namespace ReedClinic.Web.Shared;

/// <summary>Our ink and paper, told to MudBlazor in its own terms.</summary>
public static class StudioTheme
{
    private static readonly string[] Sans = ["Source Sans 3", "sans-serif"];

    /// <summary>The theme of every dialog and input.</summary>
    public static readonly MudTheme Mud = new()
    {
        PaletteLight = new PaletteLight
        {
            Primary = "#1E2A2F",
            Secondary = "#4A6078",
            Background = "#FBF8F2",
            Surface = "#FFFDF8",
            TextPrimary = "#1E2A2F",
            TextSecondary = "#4B575C",
            Error = "#A8452E",
            Success = "#2F6B4F",
            ActionDefault = "#1E2A2F",
        },
        Typography = new Typography { Default = new DefaultTypography { FontFamily = Sans, FontSize = "1rem" } },
    };
}
